import { createMemo, createRenderEffect, onCleanup, Show, untrack } from 'solid-js';
import { bandOf } from '../../../shared/checks/band.ts';
import type { OutputResult } from '../../engine/rows/results.ts';
import { createText } from '../kit/text.ts';
import { useSheet } from '../state/context.ts';
import { judgedText } from '../state/judged-text.ts';
import type { Figures } from '../state/lines.ts';
import { moveText } from '../state/move-text.ts';
import { type Move, standingFigure } from '../state/moves.ts';
import type { RowKey } from '../state/row-key.ts';
import type { OutputShow } from '../state/show.ts';
import { GridCell } from './grid-cell.tsx';
import { HeldValue } from './held-note.tsx';

export interface ValueCellProps {
  row: RowKey;
  cell: string;
  output: string;
}

/** What the last edit did, in words. */
const movedText = (now: OutputResult | undefined, { from, to }: Move, show: OutputShow): string => {
  if (to === undefined) return '';
  if (from === undefined) return 'new';
  // From the plan to the part: the line above says it.
  if (now?.measured && from === now.planned?.value) return '';
  const like = standingFigure(now);
  const by = moveText(to - from, like, (si) => show.change(si, like));
  return by ? `${by} (was ${show.amount(from, like)})` : '';
};

/** The planned size where the part has been read, and by how much it came out from it. */
const planText = (now: OutputResult | undefined, read: boolean, show: OutputShow): string => {
  const { planned, difference } = now ?? {};
  if (!planned) return '';
  const step = difference ? `, ${show.step(difference.value, difference)}` : '';
  return `planned ${show.number(planned.value, planned)} ${show.beside(planned, read)}${step}`;
};

/**
 * The figure with its spread; plan and part one above the other where there are both; below, what the last edit did.
 * What there is to show depends on the shape of the result, and its texts are written by one computation: an edit may
 * move hundreds of lines, and each thing that depends on a figure by itself costs as much as writing it.
 */
export const ValueCell = (props: ValueCellProps) => {
  const { show, sheet } = useSheet();
  /** A line lives as long as what shows it. */
  const line = untrack(() => sheet.line(props.cell));
  const shape = () => line?.shape?.outputs[props.output];
  const result = () => line?.result?.outputs[props.output];
  /** The line itself is a reading, so that its spread is an expanded uncertainty. */
  const read = createMemo(() => sheet.line(props.cell)?.record.role === 'measured');
  const at = createMemo(() => show.output(props.cell, props.output));
  const [value, spread, judged, moved] = [createText(), createText(), createText(), createText()];
  const write = ({ result: all, moved: moves }: Figures): void => {
    const { output } = props;
    const now = all?.outputs[output];
    const own = at();
    const figure = now?.measured ?? now?.planned;
    const told = figure && own.told(figure, bandOf(figure, now, now?.measured !== undefined || read()));
    value.write(told?.value ?? '');
    spread.write(told ? told.beside + (now?.stands === 'issued' && !now.measured ? ' released' : '') : '');
    judged.write(judgedText(now, own));
    moved.write(movedText(now, moves[output] ?? {}, own));
  };
  if (line) {
    // Figures of an edit come by themselves; whatever else they depend on is followed here.
    createRenderEffect(() => {
      if (line.shape) write(untrack(() => line.figures));
    });
    onCleanup(line.onFigures((figures) => untrack(() => write(figures))));
  }
  const Told = () => (
    <>
      <b class="mr-2 text-figure whitespace-nowrap">{value.node}</b>
      <small class="inline-block mr-2 caption empty:hidden">{spread.node}</small>
      <small class="judged block caption empty:hidden">{judged.node}</small>
      <Show when={show.other(props.cell, props.output)}>
        {(other) => {
          const text = () => {
            const { measured, planned } = result() ?? {};
            const figure = measured ?? planned;
            if (!figure) return '';
            const band = bandOf(figure, result(), measured !== undefined || read());
            return `${other().value(figure, band)} ${other().beside(figure, band)}`;
          };
          return (
            <small
              class="other-system block mr-2 caption whitespace-nowrap empty:hidden"
              textContent={text()}
            />
          );
        }}
      </Show>
    </>
  );
  const aim = () => {
    const { planned } = result() ?? {};
    if (planned?.aim === undefined || planned.aim === planned.value) return '';
    return `aim ${at().number(planned.aim, planned)}`;
  };
  return (
    <GridCell row={props.row} column="value">
      <Show
        when={shape()?.measured}
        fallback={
          <Show when={shape()?.planned}>
            <span class="amount block">
              <Told />
              <Show when={shape()?.planned?.aim !== undefined}>
                <small class="inline-block mr-2 caption empty:hidden" textContent={aim()} />
              </Show>
            </span>
          </Show>
        }
      >
        <span class="amount actual block">
          <Told />
        </span>
        <Show when={shape()?.planned}>
          <span class="amount block">
            <small
              class="block caption empty:hidden"
              title="planned size, and by how much it came out from it"
              textContent={planText(result(), read(), at())}
            />
          </span>
        </Show>
      </Show>
      <Show when={shape()?.replanned}>
        <small
          class="caption"
          textContent={`would now be ${result()?.replanned ? at().value(result()!.replanned!) : ''}`}
        />
      </Show>
      <Show when={shape()?.logical !== undefined}>
        <b>{shape()?.logical ? 'true' : 'false'}</b>
      </Show>
      <span class="moved block text-moved text-small empty:hidden">{moved.node}</span>
      <HeldValue cell={props.cell} output={props.output} />
    </GridCell>
  );
};
