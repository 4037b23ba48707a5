import { For, Show } from 'solid-js';
import {
  cellValueWords,
  fieldWords,
  sheetFieldWords,
  sheetValueWords,
} from '../../../shared/sheet/field-words.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { CellDifference, Differences, FieldDifference } from '../../document/differences.ts';
import { Said } from './said.tsx';

export const cellTitle = (cell: CellRecord): string => cell.label || cell.name || 'a line without a name';

const WHAT = { added: 'new', gone: 'gone', changed: 'changed' } as const;

/** One field of a line, or of the sheet itself, before and after. */
export const FieldChange = (props: { field: string; before: unknown; after: unknown; ofSheet?: boolean }) => {
  const words = () => (props.ofSheet ? sheetFieldWords : fieldWords)(props.field);
  const said = (value: unknown) => (props.ofSheet ? sheetValueWords : cellValueWords)(props.field, value);
  return (
    <li>
      {words()}:{' '}
      <del class="text-soft">
        <Said text={said(props.before)} />
      </del>{' '}
      <span aria-hidden="true">→</span>{' '}
      <ins class="font-bold decoration-none">
        <Said text={said(props.after)} />
      </ins>
    </li>
  );
};

const CellChange = (props: { change: CellDifference }) => (
  <li class="difference">
    <p>
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
    </p>
    <Show when={props.change.fields.length > 0}>
      <ul class="pl-4 lined-l-wide-rule">
        <For each={props.change.fields}>
          {(field) => <FieldChange field={field.field} before={field.before} after={field.after} />}
        </For>
      </ul>
    </Show>
  </li>
);

/** What one state of a sheet says otherwise than another, cell by cell. */
export const DifferencesList = (props: { differences: Differences; none: string }) => {
  const all = () => props.differences;
  const nothing = () => all().cells.length === 0 && all().sheet.length === 0 && !all().moved;
  return (
    <Show when={!nothing()} fallback={<p>{props.none}</p>}>
      <ul class="differences grid gap-2 max-h-22rem overflow-auto [&_li]:wrap-anywhere">
        <For each={all().sheet}>
          {(field: FieldDifference) => (
            <FieldChange ofSheet field={field.field} before={field.before} after={field.after} />
          )}
        </For>
        <For each={all().cells}>{(change) => <CellChange change={change} />}</For>
        <Show when={all().moved}>
          <li>The lines stand in another order.</li>
        </Show>
      </ul>
    </Show>
  );
};
