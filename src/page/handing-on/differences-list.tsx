import { For, type JSX, Show } from 'solid-js';
import {
  cellValueWords,
  fieldWords,
  sheetFieldWords,
  sheetValueWords,
} from '../../../shared/sheet/field-words.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { CellDifference, Differences, FieldDifference } from '../../document/differences.ts';
import { inputTextWords, inputWords } from '../state/input-said.ts';
import { useLibrary } from '../state/library.ts';
import { Said } from './said.tsx';

export const cellTitle = (cell: CellRecord): string => cell.label || cell.name || 'a line without a name';

const WHAT = { added: 'new', gone: 'gone', changed: 'changed' } as const;

/** Which differences are ticked, by the id of the line, the field of the sheet, or `order`. */
export interface Ticks {
  cell: (id: string) => boolean;
  setting: (field: string) => boolean;
  order: () => boolean;
  turn: (what: 'cell' | 'setting' | 'order', which: string) => void;
}

/** A box before what it takes; nothing where there is nothing to choose. */
const Ticked = (props: { ticked: boolean | undefined; onTurn: () => void; children: JSX.Element }) => (
  <Show when={props.ticked !== undefined} fallback={props.children}>
    <label class="along min-h-target">
      <input class="tickable" type="checkbox" checked={props.ticked} onChange={() => props.onTurn()} />
      <span>{props.children}</span>
    </label>
  </Show>
);

/** One field of a line, or of the sheet itself, before and after. */
export const FieldChange = (props: {
  field: string;
  before: unknown;
  after: unknown;
  /** Of a line from the library: its inputs are called as the line calls them. */
  kind?: string | undefined;
  ofSheet?: boolean;
  ticks?: Ticks | undefined;
}) => {
  const library = useLibrary();
  const input = () => (props.kind ? /^inputs\.(.+)$/.exec(props.field)?.[1] : undefined);
  const words = () => {
    const name = input();
    if (name) return inputWords(library(), props.kind, name);
    return (props.ofSheet ? sheetFieldWords : fieldWords)(props.field);
  };
  const said = (value: unknown) => {
    const words = (props.ofSheet ? sheetValueWords : cellValueWords)(props.field, value);
    const name = input();
    return name ? inputTextWords(library(), props.kind, name, words) : words;
  };
  return (
    <li>
      <Ticked
        ticked={props.ofSheet ? props.ticks?.setting(props.field) : undefined}
        onTurn={() => props.ticks?.turn('setting', props.field)}
      >
        {words()}:{' '}
        <del class="text-soft">
          <Said text={said(props.before)} />
        </del>{' '}
        <span aria-hidden="true">→</span>{' '}
        <ins class="font-bold decoration-none">
          <Said text={said(props.after)} />
        </ins>
      </Ticked>
    </li>
  );
};

const CellChange = (props: { change: CellDifference; ticks: Ticks | undefined }) => (
  <li class="difference">
    <Ticked
      ticked={props.ticks?.cell(props.change.id)}
      onTurn={() => props.ticks?.turn('cell', props.change.id)}
    >
      <span class="caption">{WHAT[props.change.what]}</span>{' '}
      <strong>
        <Said text={cellTitle(props.change.cell)} />
      </strong>
      <Show when={props.change.what !== 'changed' && props.change.cell.entry}>
        {(entry) => (
          <>
            {' '}
            <Said text={entry()} />
          </>
        )}
      </Show>
    </Ticked>
    <Show when={props.change.fields.length > 0}>
      <ul class="pl-4 lined-l-wide-rule">
        <For each={props.change.fields}>
          {(field) => (
            <FieldChange
              kind={props.change.cell.kind}
              field={field.field}
              before={field.before}
              after={field.after}
            />
          )}
        </For>
      </ul>
    </Show>
  </li>
);

/** What one state of a sheet says otherwise than another, cell by cell; with `ticks`, each to be taken or left. */
export const DifferencesList = (props: {
  differences: Differences;
  none: string;
  ticks?: Ticks | undefined;
}) => {
  const all = () => props.differences;
  const nothing = () => all().cells.length === 0 && all().sheet.length === 0 && !all().moved;
  return (
    <Show when={!nothing()} fallback={<p>{props.none}</p>}>
      <ul class="differences grid gap-2 max-h-22rem overflow-auto [&_li]:wrap-anywhere">
        <For each={all().sheet}>
          {(field: FieldDifference) => (
            <FieldChange
              ofSheet
              field={field.field}
              before={field.before}
              after={field.after}
              ticks={props.ticks}
            />
          )}
        </For>
        <For each={all().cells}>{(change) => <CellChange change={change} ticks={props.ticks} />}</For>
        <Show when={all().moved}>
          <li>
            <Ticked ticked={props.ticks?.order()} onTurn={() => props.ticks?.turn('order', 'order')}>
              The lines stand in another order.
            </Ticked>
          </li>
        </Show>
      </ul>
    </Show>
  );
};
