import { createMemo, For, Show } from 'solid-js';
import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { CellDrawing } from '../kit/drawing.tsx';
import { careOfLine } from '../state/care.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { standingFigure } from '../state/moves.ts';
import { referred } from '../state/referred.ts';
import { drawingValues } from './drawing-values.ts';
import { NotePart } from './note-part.tsx';

/** What a library cell is for, its picture with the sheet's numbers, and what to mind: above its lines. */
export default function KindTop(props: { cell: string }) {
  const { sheet, show } = useSheet();
  const library = useLibrary();
  const record = () => sheet.line(props.cell)!.record;
  const kind = () => library()?.kinds.get(record().kind ?? '');
  const values = createMemo(() => drawingValues(sheet, props.cell, kind()!));
  const drawing = createMemo(() => kind()?.drawing?.(values()));
  const figureOf = (name: string): string => {
    const figure = standingFigure(sheet.line(props.cell)?.result?.outputs[name]);
    if (figure) return show.output(props.cell, name).value(figure);
    const text =
      record().inputs?.[name] ?? kind()?.inputs.find((input) => input.name === name)?.default ?? '';
    const taken = referred(sheet, text);
    if (taken) return show.output(taken.cell, taken.output).value(taken.figure);
    const worked = text.trimStart().startsWith('=') ? values()[name] : undefined;
    if (worked === undefined) return writtenOut(text.replace(/\s*±.*$/, ''));
    const quantity = kind()?.inputs.find((input) => input.name === name)?.quantity;
    return writtenOut(
      formatQuantity(Number(worked.toPrecision(5)), displayUnit(quantity, sheet.state.units)),
    );
  };
  return (
    <Show when={kind()}>
      {(k) => (
        <div class="unfold grid-cols-[minmax(16rem,1fr)_minmax(16rem,1.4fr)] items-start pb-3 column:grid-cols-[minmax(0,1fr)]">
          <div class="grid gap-2">
            <NotePart cell={props.cell} />
            <p>{k().purpose}</p>
            <Show when={careOfLine(sheet, library(), props.cell).length > 0}>
              <section class="caution">
                <strong class="text-doubt">Caution</strong>
                <ul class="dash-list">
                  <For each={careOfLine(sheet, library(), props.cell)}>{(text) => <li>{text}</li>}</For>
                </ul>
              </section>
            </Show>
          </div>
          <Show when={drawing()}>
            {(d) => (
              <CellDrawing
                drawing={d()}
                figureOf={figureOf}
                title={`${k().title}: ${sheet.titleOf(props.cell)}`}
              />
            )}
          </Show>
        </div>
      )}
    </Show>
  );
}
