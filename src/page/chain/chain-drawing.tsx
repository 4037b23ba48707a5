import { createSignal, For, Show } from 'solid-js';
import { SignShapes } from '../kit/check-mark.tsx';
import { verdictClass } from '../kit/check-words.ts';
import { edgePath, type NodeSize, type PlacedChain, type PlacedNode } from './layout.ts';
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
              {[`${node.number} ${node.title}`, [node.of, node.value].filter(Boolean).join(' '), node.state]
                .filter(Boolean)
                .join(', ')}
            </title>
            <NodeBox node={node} size={props.chain.node} />
          </g>
        )}
      </For>
    </svg>
  );
};

const ArrowHead = (props: { x: number; y: number }) => (
  <path class="head" d={`M${props.x} ${props.y}l-9 -3.500v7z`} />
);

/** Height of a line of text, and characters of it on a unit of width. */
const LINE = 15;
const SPAN = 0.128;

const NodeBox = (props: { node: PlacedNode; size: NodeSize }) => {
  const across = () => Math.floor((props.size.width - 28) * SPAN);
  const room = () => Math.floor((props.size.height - 14) / LINE);
  const whole = () => [props.node.of, props.node.value].filter(Boolean).join(' ');
  /** The mark of the check shortens the last line. */
  const onOne = () => whole().length <= across() - (props.node.state ? 2 : -1);
  const value = () => (onOne() ? whole() : props.node.value);
  /** Lines left above the value, of which what it is of keeps one where there are enough. */
  const above = () => room() - 1;
  const title = () => wrapText(props.node.title, across(), onOne() ? above() : Math.max(2, above() - 1));
  const of = () => (onOne() ? [] : wrapText(props.node.of ?? '', across(), above() - title().length));
  return (
    <>
      <rect class="box" width={props.size.width} height={props.size.height} />
      <line class="rule" x1="28" y1="0" x2="28" y2={props.size.height} />
      <text class="number" x="14" y="18" text-anchor="middle">
        {props.node.number}
      </text>
      <For each={title()}>
        {(line, i) => (
          <text class="title" x="35" y={17 + LINE * i()}>
            {line}
          </text>
        )}
      </For>
      <For each={of()}>
        {(line, i) => (
          <text x="35" y={props.size.height - 9 - LINE * (of().length - i())}>
            {line}
          </text>
        )}
      </For>
      <text class="value" x="35" y={props.size.height - 9}>
        {wrapText(value(), across() + 2, 1)[0] ?? ''}
      </text>
      <Show when={props.node.state}>
        {(state) => (
          <g class={verdictClass(state())}>
            <g class="tone">
              <g transform={`translate(${props.size.width - 24} ${props.size.height - 24}) scale(0.9)`}>
                <SignShapes state={state()} />
              </g>
            </g>
          </g>
        )}
      </Show>
    </>
  );
};
