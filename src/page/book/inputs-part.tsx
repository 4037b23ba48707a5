import { For, Match, Show, Switch } from 'solid-js';
import type { CellInput, CellKind } from '../../../cells/record/cell.ts';
import type { Library } from '../../engine/rows/library.ts';
import { addressInBook } from '../kit/router.ts';

/** What goes in: its name in the formulas, what it is, what is taken while it is blank. */
export const InputsPart = (props: { library: Library; kind: CellKind }) => (
  <section>
    <h2 class="book-head">What goes in</h2>
    <ul>
      <For each={props.kind.inputs}>
        {(input) => (
          <li class="grid grid-cols-[minmax(8rem,14rem)_1fr] gap-x-3 gap-y-1 py-2 lined-b-rule phone:grid-cols-[minmax(0,1fr)]">
            <code>{input.name}</code>
            <div>
              <b>{input.label}</b>
              <Takes library={props.library} input={input} />
              <Show when={input.hint}>
                <p>{input.hint}</p>
              </Show>
              <p class="caption">
                {whenBlank(input)}
                <Show when={input.sensible}>{(range) => ` · usually ${range()[0]} to ${range()[1]}`}</Show>
              </p>
            </div>
          </li>
        )}
      </For>
    </ul>
  </section>
);

const whenBlank = (input: CellInput): string => {
  if (input.default !== undefined) return `when blank: ${input.default}`;
  return input.optional ? 'may stay blank' : 'must be given';
};

const Takes = (props: { library: Library; input: CellInput }) => (
  <Switch fallback={<span>, {props.input.quantity}</span>}>
    <Match when={props.input.record}>
      {(record) => (
        <span>
          , a cell{' '}
          <a href={addressInBook(record())}>{props.library.kinds.get(record())?.title ?? record()}</a>
        </span>
      )}
    </Match>
    <Match when={props.input.choice}>
      {(choice) => (
        <Show when={props.library.tables.get(choice())} fallback={<span>, in words</span>}>
          {(table) => <span>, a row of the table “{table().title}”</span>}
        </Show>
      )}
    </Match>
  </Switch>
);
