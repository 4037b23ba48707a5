import { For, Show } from 'solid-js';
import type { CellKind, CellOutput } from '../../../cells/record/cell.ts';
import { Formula } from './formula.tsx';

/** What comes out, each with its formula as mathematics and the limits it is held to. */
export const OutputsPart = (props: { kind: CellKind }) => (
  <section>
    <h2 class="book-head">What comes out</h2>
    <ul>
      <For each={props.kind.outputs}>{(output) => <Output kind={props.kind} output={output} />}</For>
    </ul>
  </section>
);

const bare = (formula: string): string => formula.replace(/^=\s*/, '');

const limitsText = ({ limits }: CellOutput): string =>
  [
    limits?.lower && `not below ${bare(limits.lower)}`,
    limits?.upper && `not above ${bare(limits.upper)}`,
    limits?.wear && `worn out at ${bare(limits.wear)}`,
  ]
    .filter(Boolean)
    .join(', ');

const Output = (props: { kind: CellKind; output: CellOutput }) => {
  const tableName = () => props.kind.inputs.find((one) => one.name === props.output.table?.choice)?.label;
  return (
    <li class="py-2 lined-b-rule" classList={{ 'pl-3 lined-l-wide': props.output.face === true }}>
      <h3 class="text-figure">
        {props.output.label}{' '}
        <span class="caption font-normal">
          {props.output.quantity}, {props.output.basis === 'geometry' ? 'by geometry' : 'by a model'}
          {props.output.face ? ', on the face' : ''}
        </span>
      </h3>
      <Show when={props.output.hint}>
        <p>{props.output.hint}</p>
      </Show>
      <Show when={props.output.formula}>
        {(text) => (
          <Formula
            text={text()}
            name={props.output.name}
            label={`Formula of ${props.output.label}`}
            caption="in words"
          />
        )}
      </Show>
      <Show when={props.output.table}>
        {(table) => (
          <p>
            Read from the table at “{tableName()}”, column {table().column}, with the range the table gives.
          </p>
        )}
      </Show>
      <Show when={props.output.spread}>
        {(spread) => (
          <div class="pl-4">
            <p class="caption">
              with a spread of its own, {spread().label} ({spread().distribution}), from and to:
            </p>
            <Formula text={spread().low} label={`Lower end of ${spread().label}`} />
            <Formula text={spread().high} label={`Upper end of ${spread().label}`} />
          </div>
        )}
      </Show>
      <Show when={limitsText(props.output)}>{(text) => <p class="caption">checked: {text()}</p>}</Show>
    </li>
  );
};
