import { createMemo, For, Show } from 'solid-js';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { standingFigure } from '../state/moves.ts';
import { stackBars } from './bars.ts';
import { type StackTerm, stackOf } from './stack-of.ts';
import './stack.css';

const LENGTH = 260;
const ROW = 30;

/** A sum or difference of dimensions as bars laid end to end, with what is left between them, in a drawing and in words. */
export const StackUp = (props: { cell: string; output: string }) => {
  const { sheet, show, goTo } = useSheet();
  const library = useLibrary();
  const terms = createMemo(() => stackOf(sheet, library(), props.cell, props.output));
  const total = () => standingFigure(sheet.line(props.cell)?.result?.outputs[props.output]);
  const drawn = createMemo(() => {
    const items = terms();
    const figure = total();
    return items && figure ? { items, figure, ...stackBars(items, figure, LENGTH) } : undefined;
  });
  const at = () => show.output(props.cell, props.output);
  /** A term in the unit and places of its own line. */
  const own = (term: StackTerm) =>
    (term.cell && term.output ? show.output(term.cell, term.output) : at()).amount(term.value, {
      ...term,
      centre: term.value,
      u: 0,
    });
  const words = () => {
    const d = drawn();
    if (!d) return '';
    const { value, low, high } = d.figure;
    const what = !d.items.some(({ sign }) => sign === -1)
      ? `Together ${at().value(d.figure)}`
      : value < 0
        ? `They overlap by ${at().amount(-value, d.figure)}`
        : `${at().value(d.figure)} is left`;
    const worst =
      low < high ? `; at worst ${at().number(low, d.figure)} to ${at().amount(high, d.figure)}` : '';
    return `${what}${worst}.`;
  };
  const height = () => ROW * ((drawn()?.items.length ?? 0) + 1) + 6;
  return (
    <Show when={drawn()}>
      {(d) => (
        <section class="stack-up">
          <h3 class="part-head">How the sizes stack up</h3>
          <div class="grid grid-cols-[minmax(8rem,1fr)_minmax(10rem,1fr)] gap-3 phone:grid-cols-[1fr]">
            <svg
              class="block w-full h-auto"
              viewBox={`0 0 ${LENGTH} ${height()}`}
              role="img"
              aria-label={words()}
            >
              <line class="zero" x1={d().total.from} x2={d().total.from} y1="0" y2={height()} />
              <For each={d().bars}>
                {(bar, i) => (
                  <g classList={{ minus: d().items[i()]!.sign === -1 }}>
                    <rect
                      class="bar"
                      x={Math.min(bar.from, bar.to)}
                      y={ROW * i() + 9}
                      width={Math.max(1, Math.abs(bar.to - bar.from))}
                      height="12"
                    />
                    <path class="end" d={endMark(bar.to, ROW * i() + 15, d().items[i()]!.sign)} />
                    <line class="spread" x1={bar.low} x2={bar.high} y1={ROW * i() + 15} y2={ROW * i() + 15} />
                    <line class="drop" x1={bar.to} x2={bar.to} y1={ROW * i() + 21} y2={ROW * (i() + 1) + 9} />
                  </g>
                )}
              </For>
              <rect
                class="left"
                x={Math.min(d().total.from, d().total.to)}
                y={ROW * d().bars.length + 9}
                width={Math.max(1, Math.abs(d().total.to - d().total.from))}
                height="12"
              />
              <line
                class="spread"
                x1={d().total.low}
                x2={d().total.high}
                y1={ROW * d().bars.length + 15}
                y2={ROW * d().bars.length + 15}
              />
              <For each={d().breaks}>
                {(gap) => <path class="break" d={breakMark(gap.at + gap.length / 2, height())} />}
              </For>
            </svg>
            <ol class="grid content-around">
              <For each={d().items}>
                {(term) => (
                  <li>
                    {term.sign === 1 ? '+' : '−'} <TermName term={term} onGo={goTo} />{' '}
                    <span class="caption">{own(term)}</span>
                  </li>
                )}
              </For>
              <li>
                = <b>{at().value(d().figure)}</b>
              </li>
            </ol>
          </div>
          <p>{words()}</p>
          <Show when={d().breaks.length > 0}>
            <p class="caption">
              True to scale about the ends; long stretches are cut short at the double stroke.
            </p>
          </Show>
        </section>
      )}
    </Show>
  );
};

const TermName = (props: { term: StackTerm; onGo: (cell: string) => void }) => (
  <Show when={props.term.cell} fallback={props.term.title}>
    {(cell) => (
      <button type="button" class="go" onClick={() => props.onGo(cell())}>
        {props.term.title}
      </button>
    )}
  </Show>
);

/** An arrow head at the end of a bar: the way it is laid. */
const endMark = (x: number, y: number, sign: 1 | -1): string => `M${x} ${y}l${-7 * sign} -6v12z`;

const breakMark = (x: number, height: number): string =>
  `M${x - 4} ${height}l4 ${-height}M${x + 1} ${height}l4 ${-height}`;
