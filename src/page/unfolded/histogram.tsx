import { For, Show } from 'solid-js';
import type { SimulatedOutput } from '../../engine/montecarlo/types.ts';

export interface HistogramProps {
  drawn: SimulatedOutput;
  limits: ReadonlyArray<{ value: number; label: string; wear?: boolean }>;
  words: string;
  number: (si: number) => string;
}

const WIDTH = 420;
const HEIGHT = 130;
const TOP = 16;

/** How the draws lie: bars, the limits as wide lines, the coverage interval below, the linear one under it. */
export const Histogram = (props: HistogramProps) => {
  const span = () => props.drawn.histogram.to - props.drawn.histogram.from || Math.abs(props.drawn.mean) || 1;
  /** The drawing reaches to limits that are near; those far off are told in words. */
  const ends = (): [number, number] => {
    const { from, to } = props.drawn.histogram;
    const near = props.limits.map(({ value }) => value).filter((x) => x > from - span() && x < to + span());
    const low = Math.min(from, ...near);
    const high = Math.max(to, ...near);
    const pad = (high - low || span()) * 0.06;
    return [low - pad, high + pad];
  };
  const x = (value: number) => {
    const [low, high] = ends();
    return (WIDTH * (value - low)) / (high - low);
  };
  const shown = (value: number) => value >= ends()[0] && value <= ends()[1];
  const most = () => Math.max(1, ...props.drawn.histogram.counts);
  const binWidth = () => span() / props.drawn.histogram.counts.length;
  const clamp = (value: number) => Math.min(WIDTH, Math.max(0, x(value)));
  return (
    <svg
      class="histogram block w-full max-w-34rem h-auto"
      viewBox={`0 0 ${WIDTH} ${HEIGHT + 62}`}
      role="img"
      aria-label={props.words}
    >
      <For each={props.drawn.histogram.counts}>
        {(count, i) => {
          const left = () => x(props.drawn.histogram.from + i() * binWidth());
          const height = () => ((HEIGHT - TOP) * count) / most();
          return (
            <rect
              class="bin"
              x={left()}
              y={HEIGHT - height()}
              width={Math.max(0.5, x(props.drawn.histogram.from + (i() + 1) * binWidth()) - left() - 0.4)}
              height={height()}
            />
          );
        }}
      </For>
      <line class="axis" x1="0" x2={WIDTH} y1={HEIGHT} y2={HEIGHT} />
      <line class="mean" x1={x(props.drawn.mean)} x2={x(props.drawn.mean)} y1={TOP} y2={HEIGHT + 8} />
      <For each={props.limits.filter(({ value }) => shown(value))}>
        {(limit) => (
          <>
            <line
              class={limit.wear ? 'limit wear' : 'limit'}
              x1={x(limit.value)}
              x2={x(limit.value)}
              y1={TOP}
              y2={HEIGHT}
            />
            <text x={Math.min(WIDTH - 34, Math.max(34, x(limit.value)))} y="11" text-anchor="middle">
              {limit.label}
            </text>
          </>
        )}
      </For>
      <Interval
        y={HEIGHT + 16}
        from={clamp(props.drawn.low)}
        to={clamp(props.drawn.high)}
        class="simulated"
      />
      <Interval
        y={HEIGHT + 30}
        from={clamp(props.drawn.linear.low)}
        to={clamp(props.drawn.linear.high)}
        class="linear"
      />
      <Show when={props.drawn.histogram.counts.length > 0}>
        <text x={clamp(props.drawn.low)} y={HEIGHT + 52} text-anchor="middle">
          {props.number(props.drawn.low)}
        </text>
        <text x={clamp(props.drawn.high)} y={HEIGHT + 52} text-anchor="middle">
          {props.number(props.drawn.high)}
        </text>
      </Show>
    </svg>
  );
};

const Interval = (props: { y: number; from: number; to: number; class: string }) => (
  <path
    class={`interval ${props.class}`}
    d={`M${props.from} ${props.y - 5}v10M${props.from} ${props.y}H${props.to}M${props.to} ${props.y - 5}v10`}
  />
);
