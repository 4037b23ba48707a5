import { createSignal, For, Show } from 'solid-js';
import { SignShapes } from '../marks/check-mark.tsx';
import { verdictClass } from '../marks/check-words.ts';
import { edgePath, NODE, type PlacedChain, type PlacedNode } from './layout.ts';
import { wrapText } from './wrap.ts';

export interface ChainDrawingProps {
  chain: PlacedChain;
  title: string;
  onGo: (cell: string) => void;
  ref: (element: SVGSVGElement) => void;
}

/** Lines as boxes from left to right, arrows from what feeds to what is fed. A press goes to the line. */
export const ChainDrawing = (props: ChainDrawingProps) => {
  const [at, setAt] = createSignal<string>();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset holds no drawing
    <svg
      ref={props.ref}
      class="chain-drawing"
      viewBox={`0 0 ${props.chain.width} ${props.chain.height}`}
      width={props.chain.width}
      height={props.chain.height}
      role="group"
      aria-label={`Chain of ${props.title}`}
    >
      <rect class="sheet-ground" width={props.chain.width} height={props.chain.height} />
      <For each={props.chain.edges}>
        {(edge) => (
          <g class="edge" classList={{ near: at() === edge.from || at() === edge.to }}>
            <path d={edge.path ?? edgePath(edge.points)} />
            <ArrowHead x={edge.points.at(-1)?.x ?? 0} y={edge.points.at(-1)?.y ?? 0} />
          </g>
        )}
      </For>
      <For each={props.chain.nodes}>
        {(node) => (
          // biome-ignore lint/a11y/useSemanticElements: a drawing has no other way to hold a link
          <g
            class="node"
            role="link"
            tabindex={0}
            transform={`translate(${node.x} ${node.y})`}
            onClick={() => props.onGo(node.id)}
            onKeyDown={(event) => event.key === 'Enter' && props.onGo(node.id)}
            onPointerEnter={() => setAt(node.id)}
            onPointerLeave={() => setAt(undefined)}
            onFocus={() => setAt(node.id)}
            onBlur={() => setAt(undefined)}
          >
            <title>
              {[`${node.number} ${node.title}`, node.value, node.state].filter(Boolean).join(', ')}
            </title>
            <NodeBox node={node} />
          </g>
        )}
      </For>
    </svg>
  );
};

const ArrowHead = (props: { x: number; y: number }) => (
  <path class="head" d={`M${props.x} ${props.y}l-9 -3.500v7z`} />
);

const NodeBox = (props: { node: PlacedNode }) => {
  const lines = () => wrapText(props.node.title, 23, 2);
  return (
    <>
      <rect class="box" width={NODE.width} height={NODE.height} />
      <line class="rule" x1="28" y1="0" x2="28" y2={NODE.height} />
      <text class="number" x="14" y="18" text-anchor="middle">
        {props.node.number}
      </text>
      <For each={lines()}>
        {(line, i) => (
          <text class="title" x="35" y={17 + 15 * i()}>
            {line}
          </text>
        )}
      </For>
      <text class="value" x="35" y={NODE.height - 9}>
        {wrapText(props.node.value, props.node.state ? 22 : 25, 1)[0] ?? ''}
      </text>
      <Show when={props.node.state}>
        {(state) => (
          <g class={verdictClass(state())}>
            <g class="tone">
              <g transform={`translate(${NODE.width - 24} ${NODE.height - 24}) scale(0.9)`}>
                <SignShapes state={state()} />
              </g>
            </g>
          </g>
        )}
      </Show>
    </>
  );
};
