import './sketch.css';
import { For, Show } from 'solid-js';
import type { Slot } from './slots.ts';

export interface SketchProps {
  /** Readings wanted or there at each place along. */
  rounds: readonly number[];
  at: Slot | undefined;
  /** Measured across the inside; absent where it is not known. */
  inside?: boolean | undefined;
  /** Known to be a bore or a shaft, however often it is read; what is read one way only may be a thickness or a gap. */
  round: boolean;
}

const BODY = { x: 12, y: 26, width: 168, height: 44 };
const FACE = { x: 250, y: 48, r: 36 };

/** The part from the side with its places along, and from its end with the directions round; the present ones heavy. */
export const Sketch = (props: SketchProps) => {
  const xOf = (place: number) => BODY.x + (BODY.width * (place + 0.5)) / props.rounds.length;
  const round = () => Math.max(props.rounds[props.at?.place ?? 0] ?? 1, (props.at?.direction ?? 0) + 1);
  /** Bore and shaft are drawn from their end too; what is read one way only is drawn flat. */
  const isRound = () => props.round || props.rounds.some((n) => n > 1) || round() > 1;
  const words = () => {
    const { at } = props;
    if (!at) return 'All planned readings are taken';
    const place = `Place ${at.place + 1} of ${Math.max(props.rounds.length, at.place + 1)}`;
    return !isRound() ? place : `${place} along, direction ${at.direction + 1} of ${round()} round`;
  };
  return (
    <figure class="bench-sketch grid grid-cols-[1.7fr_1fr] gap-2 items-center">
      <svg class="block w-full h-auto" viewBox="0 0 300 96" role="img" aria-label={words()}>
        <rect class="body" {...BODY} />
        <Show when={isRound()}>
          <line class="centre" x1="2" x2={BODY.x + BODY.width + 10} y1="48" y2="48" />
        </Show>
        <Show when={isRound() && props.inside}>
          <path class="wall" d={`M${BODY.x} 26v-12h${BODY.width}v12M${BODY.x} 70v12h${BODY.width}v-12`} />
        </Show>
        <For each={props.rounds}>
          {(_, place) => (
            <g classList={{ now: props.at?.place === place() }}>
              <line class="station" x1={xOf(place())} x2={xOf(place())} y1="20" y2="76" />
              <text x={xOf(place())} y="94" text-anchor="middle">
                {place() + 1}
              </text>
            </g>
          )}
        </For>
        <Show when={isRound()}>
          <circle class="body" cx={FACE.x} cy={FACE.y} r={FACE.r} />
          <Show when={props.inside}>
            <circle class="wall" cx={FACE.x} cy={FACE.y} r={FACE.r + 8} />
          </Show>
          <For each={Array.from({ length: round() }, (_, i) => i)}>
            {(direction) => (
              <g
                classList={{ now: props.at?.direction === direction }}
                transform={`rotate(${-90 + (180 * direction) / round()} ${FACE.x} ${FACE.y})`}
              >
                <line class="station" x1={FACE.x - FACE.r} x2={FACE.x + FACE.r} y1={FACE.y} y2={FACE.y} />
                <Show when={props.at?.direction === direction}>
                  <path class="tip" d={tips(props.inside)} />
                </Show>
              </g>
            )}
          </For>
        </Show>
      </svg>
      <figcaption>{words()}</figcaption>
    </figure>
  );
};

/** Arrow heads at both ends of the diameter: from within against a bore, from without against a shaft. */
const tips = (inside: boolean | undefined): string => {
  const left = FACE.x - FACE.r;
  const right = FACE.x + FACE.r;
  return inside === false
    ? `M${left} ${FACE.y}l-9 -5v10zM${right} ${FACE.y}l9 -5v10z`
    : `M${left} ${FACE.y}l9 -5v10zM${right} ${FACE.y}l-9 -5v10z`;
};
