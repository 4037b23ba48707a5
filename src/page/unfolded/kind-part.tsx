import { createMemo, For, Show } from 'solid-js';
import { TextField } from '../fields/text-field.tsx';
import { CellDrawing } from '../library/drawing.tsx';
import { drawingValues } from '../library/drawing-values.ts';
import { useSheet } from '../sheet/context.ts';
import { useLibrary } from '../state/library.ts';
import { FeedLinks } from './feed-links.tsx';

/** A library cell laid open: what it is for, its picture, what it takes for granted, where it comes from, what to mind. */
export const KindPart = (props: { cell: string }) => {
  const { sheet, show } = useSheet();
  const library = useLibrary();
  const record = () => sheet.line(props.cell)!.record;
  const kind = () => library()?.kinds.get(record().kind ?? '');
  const outputs = () => sheet.line(props.cell)?.result?.outputs ?? {};
  const drawing = createMemo(() => kind()?.drawing?.(drawingValues(sheet, props.cell, kind()!)));
  const figureOf = (name: string): string => {
    const output = outputs()[name];
    const figure = output && (output.measured ?? output.planned);
    if (figure) return show.output(props.cell, name).value(figure);
    return record().inputs?.[name] ?? kind()?.inputs.find((input) => input.name === name)?.default ?? '';
  };
  return (
    <>
      <Show when={kind()}>
        {(k) => (
          <>
            <p>{k().purpose}</p>
            <Show when={drawing()}>
              {(d) => (
                <CellDrawing
                  drawing={d()}
                  figureOf={figureOf}
                  title={`${k().title}: ${sheet.titleOf(props.cell)}`}
                />
              )}
            </Show>
            <Show when={k().cautions.length > 0}>
              <section class="caution">
                <strong>Mind</strong>
                <ul class="plain-list">
                  <For each={k().cautions}>{(text) => <li>{text}</li>}</For>
                </ul>
              </section>
            </Show>
          </>
        )}
      </Show>
      <div class="columns">
        <section>
          <h3>The line</h3>
          <div class="fields">
            <TextField
              label="Label"
              value={record().label}
              onCommit={(text) => sheet.document.setField(props.cell, 'label', text)?.message}
            />
            <TextField
              label="Name in formulas"
              value={record().name}
              onCommit={(text) => sheet.document.renameCell(props.cell, text)?.message}
            />
          </div>
          <TextField
            label="Note"
            value={record().note}
            lines={2}
            onCommit={(text) => sheet.document.setField(props.cell, 'note', text)?.message}
            hint="Ctrl+Enter takes it"
          />
        </section>
        <FeedLinks cell={props.cell} />
        <Show when={kind()}>
          {(k) => (
            <section>
              <h3>Taken for granted</h3>
              <ul class="plain-list">
                <For each={k().assumptions}>{(text) => <li>{text}</li>}</For>
              </ul>
              <h3>Sources</h3>
              <ul class="plain-list">
                <For each={k().sources}>{(text) => <li>{text}</li>}</For>
                <For each={k().inputs.filter((input) => input.source)}>
                  {(input) => (
                    <li>
                      {input.label}: {input.source}
                    </li>
                  )}
                </For>
              </ul>
              <p class="caption">
                {k().title}, edition {k().edition}
              </p>
            </section>
          )}
        </Show>
      </div>
    </>
  );
};
