import { For, Show } from 'solid-js';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { CellDifference, Differences, FieldDifference } from '../../document/differences.ts';
import { fieldWords, sheetFieldWords, valueWords } from '../../document/sharing/field-words.ts';
import { Said } from './said.tsx';
import './differences-list.css';

const SHOWN = 60;

export const cellTitle = (cell: CellRecord): string => cell.label || cell.name || 'a line without a name';

const WHAT = { added: 'new', gone: 'gone', changed: 'changed' } as const;

/** One field, before and after. */
export const FieldChange = (props: { words: string; field: string; before: unknown; after: unknown }) => (
  <li>
    {props.words}:{' '}
    <del>
      <Said text={valueWords(props.before, props.field)} />
    </del>{' '}
    <span aria-hidden="true">→</span>{' '}
    <ins>
      <Said text={valueWords(props.after, props.field)} />
    </ins>
  </li>
);

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
      <ul>
        <For each={props.change.fields}>
          {(field) => (
            <FieldChange
              words={fieldWords(field.field)}
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

/** What one state of a sheet says otherwise than another, cell by cell. */
export const DifferencesList = (props: { differences: Differences; none: string }) => {
  const all = () => props.differences;
  const nothing = () => all().cells.length === 0 && all().sheet.length === 0 && !all().moved;
  return (
    <Show when={!nothing()} fallback={<p>{props.none}</p>}>
      <ul class="differences">
        <For each={all().sheet}>
          {(field: FieldDifference) => (
            <FieldChange
              words={sheetFieldWords(field.field)}
              field={field.field}
              before={field.before}
              after={field.after}
            />
          )}
        </For>
        <For each={all().cells.slice(0, SHOWN)}>{(change) => <CellChange change={change} />}</For>
        <Show when={all().cells.length > SHOWN}>
          <li>and {all().cells.length - SHOWN} cells more</li>
        </Show>
        <Show when={all().moved}>
          <li>The lines stand in another order.</li>
        </Show>
      </ul>
    </Show>
  );
};
