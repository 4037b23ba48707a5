import { createSignal, For, Show } from 'solid-js';
import type { CellRecord, Limits } from '../../../shared/sheet/format.ts';
import { numberLines } from '../../../shared/sheet/numbering.ts';
import { roleWord } from '../../../shared/sheet/role-words.ts';
import { Said } from './said.tsx';

const FIRST = 200;

const limitsText = (limits: Limits | undefined): string =>
  [
    limits?.lower && `from ${limits.lower}`,
    limits?.upper && `to ${limits.upper}`,
    limits?.wear && `worn ${limits.wear}`,
  ]
    .filter(Boolean)
    .join(' ');

const entryText = (cell: CellRecord): string => {
  if (cell.role !== 'cell') return [cell.entry, cell.tolerance].filter(Boolean).join(' ');
  const inputs = Object.entries(cell.inputs ?? {}).map(([name, text]) => `${name}: ${text}`);
  return [cell.kind, ...inputs].filter(Boolean).join('; ');
};

const Label = (props: { cell: CellRecord }) => (
  <>
    <Said text={props.cell.label} />{' '}
    <Show when={props.cell.name}>
      <code class="[font-family:inherit] text-pencil">
        <Said text={props.cell.name} />
      </code>
    </Show>
    <Show when={props.cell.note}>
      <p class="caption">
        <Said text={props.cell.note} />
      </p>
    </Show>
  </>
);

/** The lines of a sheet to look at: nothing of it can be typed in or followed. */
export const Contents = (props: {
  cells: readonly CellRecord[];
  /** What stands beside a line: its value and its check, where they were worked out. */
  figures?: (cell: CellRecord) => { values: readonly string[]; check: string } | undefined;
}) => {
  const [all, setAll] = createSignal(false);
  const numbers = () => {
    const roles = new Map(props.cells.map(({ id, role }) => [id, role]));
    return numberLines([...roles.keys()], (id) => roles.get(id));
  };
  const shown = () => (all() ? props.cells : props.cells.slice(0, FIRST));
  return (
    <section
      class="contents rows-box phone:max-h-none"
      classList={{ 'phone:[&>table]:min-w-38rem': props.figures !== undefined }}
      aria-label="Lines of the sheet"
      tabindex={0}
    >
      <table class="long-rows">
        <thead>
          <tr>
            <th scope="col">No.</th>
            <th scope="col">What</th>
            <th
              scope="col"
              class="whitespace-nowrap"
              classList={{ 'phone:hidden': props.figures === undefined }}
            >
              Comes by
            </th>
            <th scope="col">Entry</th>
            <Show when={props.figures}>
              <th scope="col">Value</th>
              <th scope="col">Check</th>
            </Show>
            <th scope="col">Limits</th>
          </tr>
        </thead>
        <tbody>
          <For each={shown()}>
            {(cell) => (
              <Show
                when={cell.role !== 'section' && cell.role !== 'remark'}
                fallback={
                  <tr classList={{ '[&>td]:(font-bold bg-tint)': cell.role === 'section' }}>
                    <td />
                    <td colspan={props.figures ? 6 : 4}>
                      <Label cell={cell} />
                    </td>
                  </tr>
                }
              >
                <tr>
                  <td>{numbers().get(cell.id) ?? ''}</td>
                  <td>
                    <Label cell={cell} />
                  </td>
                  {/* Without figures it is as wide as the page: how a line comes by its value shows in its entry. */}
                  <td class="whitespace-nowrap" classList={{ 'phone:hidden': props.figures === undefined }}>
                    {roleWord(cell)}
                  </td>
                  <td>
                    <Said text={entryText(cell)} />
                    <Show when={cell.measured?.entry}>
                      {(entry) => (
                        <p class="caption">
                          as measured <Said text={entry()} />
                        </p>
                      )}
                    </Show>
                  </td>
                  <Show when={props.figures}>
                    <td>
                      <For each={props.figures?.(cell)?.values}>{(value) => <p>{value}</p>}</For>
                    </td>
                    <td>{props.figures?.(cell)?.check}</td>
                  </Show>
                  <td>
                    <Said text={limitsText(cell.limits)} />
                  </td>
                </tr>
              </Show>
            )}
          </For>
        </tbody>
      </table>
      <Show when={!all() && props.cells.length > FIRST}>
        <button type="button" onClick={() => setAll(true)}>
          Show all {props.cells.length} lines
        </button>
      </Show>
    </section>
  );
};
