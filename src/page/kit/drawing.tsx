import { createUniqueId, For, type JSX, Show } from 'solid-js';
import type { Drawing, Fill, Shape } from '../../../cells/record/cell.ts';
import { dimensionLine, overEdge } from './dimension-line.ts';
import './drawing.css';

export interface DrawingProps {
  drawing: Drawing;
  /** Writes an input or output with its unit, by name. */
  figureOf: (name: string) => string;
  title: string;
}

/** A cross-section after drawing practice: wide outlines, narrow hatching (opposite ways in neighbours), dimension lines. */
export const CellDrawing = (props: DrawingProps) => {
  const id = createUniqueId();
  const size = () => Math.max(props.drawing.width / 32, props.drawing.height / 19);
  const wide = () => size() * 0.14;
  // Figures are as long as the unit makes them: the sheet of paper grows where they would be cut off.
  const box = () => {
    const { width, height, shapes } = props.drawing;
    let [aside, above, below] = [0, 0, 0];
    for (const shape of shapes) {
      if (shape.kind !== 'dimension') continue;
      const { length } = dimensionText(shape, props.figureOf);
      const over = overEdge(dimensionLine(shape, size(), length), size(), length, props.drawing);
      aside = Math.max(aside, over.aside);
      above = Math.max(above, over.above);
      below = Math.max(below, over.below);
    }
    return `${-aside} ${-above} ${width + 2 * aside} ${height + above + below}`;
  };
  const fillOf = (fill: Fill | undefined) =>
    fill?.startsWith('section') ? `url(#${fill}-${id})` : undefined;
  const fillClass = (fill: Fill | undefined) =>
    fill?.startsWith('section') ? 'wide' : `wide fill-${fill ?? 'none'}`;
  const dashes = (style: string | undefined) => {
    const s = size();
    if (style === 'centre') return `${s * 1.6} ${s * 0.3} ${s * 0.3} ${s * 0.3}`;
    if (style === 'hidden') return `${s * 0.6} ${s * 0.3}`;
    return undefined;
  };
  const hatch = (name: string, turn: number, step: number) => (
    <pattern
      id={`${name}-${id}`}
      width={size() * step}
      height={size() * step}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${turn})`}
    >
      <line class="narrow" x1="0" y1="0" x2="0" y2={size() * step} stroke-width={wide() / 2} />
    </pattern>
  );
  const draw = (shape: Shape): JSX.Element => {
    switch (shape.kind) {
      case 'rect':
        return (
          <rect
            x={shape.x}
            y={shape.y}
            width={Math.max(shape.width, 0)}
            height={Math.max(shape.height, 0)}
            class={fillClass(shape.fill)}
            fill={fillOf(shape.fill)}
            stroke-width={wide()}
          />
        );
      case 'circle':
        return (
          <circle
            cx={shape.x}
            cy={shape.y}
            r={Math.max(shape.r, 0)}
            class={fillClass(shape.fill)}
            fill={fillOf(shape.fill)}
            stroke-width={wide()}
          />
        );
      case 'path':
        return (
          <path
            d={shape.d}
            class={fillClass(shape.fill)}
            fill={fillOf(shape.fill)}
            fill-rule="evenodd"
            stroke-width={wide()}
          />
        );
      case 'line':
        return (
          <line
            x1={shape.x1}
            y1={shape.y1}
            x2={shape.x2}
            y2={shape.y2}
            class={shape.style === undefined || shape.style === 'outline' ? 'wide' : 'narrow'}
            stroke-width={shape.style === undefined || shape.style === 'outline' ? wide() : wide() / 2}
            stroke-dasharray={dashes(shape.style)}
          />
        );
      case 'text':
        return (
          <text x={shape.x} y={shape.y} text-anchor={shape.anchor ?? 'start'} font-size={`${size()}`}>
            {shape.text}
          </text>
        );
      case 'dimension':
        return <DimensionShape shape={shape} size={size()} figureOf={props.figureOf} />;
    }
  };
  return (
    <figure class="drawing max-w-40rem">
      <svg class="block w-full h-auto max-h-18rem" viewBox={box()} role="img" aria-label={props.title}>
        <defs>
          {hatch('section-a', 45, 0.7)}
          {hatch('section-b', -45, 0.7)}
          {hatch('section-c', 45, 1.2)}
        </defs>
        <For each={props.drawing.shapes}>{draw}</For>
      </svg>
      <Show when={props.drawing.exaggeration}>
        <figcaption class="caption">{props.drawing.exaggeration}</figcaption>
      </Show>
    </figure>
  );
};

const dimensionText = (
  { label, of }: Extract<Shape, { kind: 'dimension' }>,
  figureOf: (name: string) => string,
): string => [label, figureOf(of)].filter(Boolean).join(' ');

const DimensionShape = (props: {
  shape: Extract<Shape, { kind: 'dimension' }>;
  size: number;
  figureOf: (name: string) => string;
}) => {
  const text = () => dimensionText(props.shape, props.figureOf);
  const line = () => dimensionLine(props.shape, props.size, text().length);
  const narrow = () => props.size * 0.07;
  return (
    <g>
      <For each={line().extensions}>
        {(e) => <line class="narrow" x1={e[0]} y1={e[1]} x2={e[2]} y2={e[3]} stroke-width={narrow()} />}
      </For>
      <line
        class="narrow"
        x1={line().x1}
        y1={line().y1}
        x2={line().x2}
        y2={line().y2}
        stroke-width={narrow()}
      />
      <For each={line().arrows}>{(d) => <path class="arrow" d={d} />}</For>
      <text
        class="behind"
        stroke-width={props.size * 0.3}
        font-size={`${props.size}`}
        text-anchor="middle"
        transform={`translate(${line().text.x} ${line().text.y}) rotate(${line().text.angle})`}
      >
        {text()}
      </text>
    </g>
  );
};
