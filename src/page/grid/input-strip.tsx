import { createMemo, For, Show } from 'solid-js';
import type { CellInput, CellKind } from '../../../cells/record/cell.ts';
import { choiceIn } from '../../engine/rows/choice-in.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { keepInPlace } from '../state/in-place.ts';
import { useLibrary } from '../state/library.ts';
import { inputRow, lineRow } from '../state/row-key.ts';

/** What a folded library cell has been given, in a few words; a press lays the input open. */
export const InputStrip = (props: { cell: string; kind: CellKind }) => {
  const { sheet, cursor } = useSheet();
  const library = useLibrary();
  const record = () => sheet.line(props.cell)!.record;
  const given = createMemo(() => props.kind.inputs.filter((input) => record().inputs?.[input.name]));
  const words = (input: CellInput): string => {
    const text = record().inputs?.[input.name] ?? '';
    const taken = sheet.line(props.cell)?.shape?.echoes[`inputs.${input.name}`];
    if (input.choice && taken) return say(taken);
    const table = input.choice && library()?.tables.get(input.choice);
    if (input.choice) return (table && choiceIn(table, text)?.name) || text;
    const id = sheet.idOf(text.replace(/^=\s*/, ''));
    return id ? sheet.titleOf(id) : writtenOut(text);
  };
  const open = (input: CellInput) =>
    keepInPlace(lineRow(props.cell), () => {
      cursor.setUnfolded(true);
      if (input.choice || input.record)
        cursor.move({ row: inputRow(props.cell, input.name), column: 'entry' });
      else cursor.edit(inputRow(props.cell, input.name));
    });
  return (
    <Show when={given().length > 0}>
      {/* One row of what it has been given: the rest is seen when the cell is unfolded. */}
      <span class="flex flex-wrap gap-x-3 gap-y-2px max-h-24px overflow-hidden touch:max-h-44px">
        <For each={given()}>
          {(input) => (
            <button
              type="button"
              class="min-h-24px p-0 lined-none lined-b-dotted-rule bg-transparent text-left cursor-text touch:min-h-44px"
              tabindex={-1}
              onClick={() => open(input)}
            >
              <span class="caption">{input.label}</span> {words(input)}
            </button>
          )}
        </For>
      </span>
    </Show>
  );
};
