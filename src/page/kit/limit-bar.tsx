import { createMemo, createUniqueId, For, Show } from 'solid-js';
import './limit-bar.css';
import { limitScale, type Mark, type ScaleInput } from './limit-scale.ts';

export interface LimitBarProps extends ScaleInput {
  metalOn?: 'low' | 'high';
  /** A filled mark for a figure read off the part, an open one for a plan. */
  actual?: boolean;
  lowerText?: string;
  upperText?: string;
  /** The whole bar in words. */
  words: string;
}

const LENGTH = 164;
const MIDDLE = 11;

const placeX = (mark: Mark): number => 4 + mark.at * (LENGTH - 8);

/** Limits as wide lines, the spread as a bar between them, the figure as a mark; the metal-on side hatched. */
export const LimitBar = (props: LimitBarProps) => {
  const hatch = `hatch-${createUniqueId()}`;
  const scale = createMemo(() => limitScale(props));
  /** From the outermost limit on the metal-on side to the end of the bar. */
  const metal = () => {
    const s = scale();
    if (!s || !props.metalOn) return undefined;
    const edge = props.metalOn === 'low' ? (s.lower ?? s.wear) : (s.upper ?? s.wear);
    if (!edge) return undefined;
    const x = placeX(edge);
    return props.metalOn === 'low' ? { x: 0, width: x } : { x, width: LENGTH - x };
  };
  return (
    <Show when={scale()}>
      {(s) => (
        <svg
          class="limit-bar block w-full h-32px overflow-visible"
          viewBox={`0 0 ${LENGTH} 32`}
          role="img"
          aria-label={props.words}
        >
          <defs>
            <pattern
              id={hatch}
              width="5"
              height="5"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line class="hatch" x1="0" y1="0" x2="0" y2="5" />
            </pattern>
          </defs>
          <Show when={metal()}>
            {(m) => <rect x={m().x} y={MIDDLE - 6} width={m().width} height="12" fill={`url(#${hatch})`} />}
          </Show>
          <line class="axis" x1="0" x2={LENGTH} y1={MIDDLE} y2={MIDDLE} />
          <For each={['lower', 'upper'] as const}>
            {(side) => (
              <Show when={s()[side]}>
                {(mark) => (
                  <>
                    <line class="limit" x1={placeX(mark())} x2={placeX(mark())} y1="2" y2="20" />
                    <text
                      x={placeX(mark()) + (side === 'lower' ? 2 : -2)}
                      y="31"
                      text-anchor={
                        side === 'lower' ? (s().upper ? 'end' : 'middle') : s().lower ? 'start' : 'middle'
                      }
                    >
                      {side === 'lower' ? props.lowerText : props.upperText}
                    </text>
                  </>
                )}
              </Show>
            )}
          </For>
          <Show when={s().wear}>
            {(mark) => <line class="wear" x1={placeX(mark())} x2={placeX(mark())} y1="2" y2="20" />}
          </Show>
          <Show when={s().before}>
            {(mark) => <line class="before" x1={placeX(mark())} x2={placeX(mark())} y1="3" y2="19" />}
          </Show>
          <Show when={s().low && s().high}>
            <line class="spread" x1={placeX(s().low!)} x2={placeX(s().high!)} y1={MIDDLE} y2={MIDDLE} />
          </Show>
          <Show when={s().value}>{(mark) => <ValueMark mark={mark()} actual={props.actual === true} />}</Show>
        </svg>
      )}
    </Show>
  );
};

const ValueMark = (props: { mark: Mark; actual: boolean }) => {
  const x = () => placeX(props.mark);
  const path = () => {
    if (props.mark.off === 'low') return `M${x() - 4} ${MIDDLE}l8 -6v12z`;
    if (props.mark.off === 'high') return `M${x() + 4} ${MIDDLE}l-8 -6v12z`;
    return `M${x()} ${MIDDLE - 7}l5 7l-5 7l-5 -7z`;
  };
  return <path class={props.actual ? 'actual' : 'planned'} d={path()} />;
};
