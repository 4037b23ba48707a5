import { createResource, For, Show } from 'solid-js';
import { GRADE_WORDS } from '../../../cells/grades.ts';
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import type { WorkedOut } from '../../engine/book/worked-example.ts';
import { CellDrawing } from '../kit/drawing.tsx';
import { nearness, numberOf, outputText, valuesOf } from './example-figures.ts';
import { Formula } from './formula.tsx';
import { TextList } from './text-list.tsx';

export interface ExamplePartProps {
  kind: CellKind;
  example: WorkedExample;
  workOut: () => Promise<WorkedOut>;
}

/** A worked example: what its source enters and gives, beside what the engine works out as the page is opened. */
export const ExamplePart = (props: ExamplePartProps) => {
  const [worked] = createResource(() => props.workOut());
  return (
    <article class="stacked gap-2 mb-3 p-3 lined">
      <h3 class="text-figure">{props.example.title}</h3>
      <p class="caption">
        {props.example.source} ({GRADE_WORDS[props.example.grade]})
      </p>
      <ul class="flex flex-wrap gap-x-4 gap-y-1">
        <For each={entered(props)}>
          {([label, text]) => (
            <li>
              {label} <b>{text}</b>
            </li>
          )}
        </For>
      </ul>
      <Show
        when={!worked.error}
        fallback={<p role="alert">The engine could not work this out: {String(worked.error?.message)}</p>}
      >
        <Show when={worked()} fallback={<p>Working it out …</p>}>
          {(found) => <Outcome kind={props.kind} example={props.example} worked={found()} />}
        </Show>
      </Show>
    </article>
  );
};

const entered = ({ kind, example }: ExamplePartProps): [label: string, text: string][] =>
  Object.entries(example.inputs).flatMap(([name, entry]): [string, string][] => {
    const label = kind.inputs.find((input) => input.name === name)?.label ?? name;
    return typeof entry === 'string'
      ? [[label, entry]]
      : Object.entries(entry).map(([output, text]) => [`${label}: ${output}`, text]);
  });

const Outcome = (props: { kind: CellKind; example: WorkedExample; worked: WorkedOut }) => {
  const outputs = () =>
    props.kind.outputs.flatMap((output) => {
      const result = props.worked.result.outputs[output.name];
      return result && !result.idle ? [{ output, result }] : [];
    });
  const expected = (name: string) => props.worked.expected.find((one) => one.output === name);
  const drawing = () => props.kind.drawing?.(valuesOf(props.worked));
  const number = (name: string) => numberOf({ name }, props.worked, props.example) ?? '';
  return (
    <>
      <table class="rows phone:([&_:is(td,th)]:p-1 text-small)">
        <thead>
          <tr>
            <th scope="col">worked out now</th>
            <th scope="col">figure</th>
            <th scope="col">the source gives</th>
          </tr>
        </thead>
        <tbody>
          <For each={outputs()}>
            {({ output, result }) => (
              <tr>
                <th scope="row">{output.label}</th>
                <td classList={{ 'font-bold!': output.face === true }}>{outputText(result, props.worked)}</td>
                <td>
                  <Show when={expected(output.name)}>
                    {(one) => (
                      <>
                        {one().text}, {nearness(props.example.expect[output.name]?.within ?? 0)}{' '}
                        <b>{one().holds ? '✓ agrees' : '✗ does not agree'}</b>
                      </>
                    )}
                  </Show>
                </td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={props.worked.result.remarks.length > 0}>
        <p>The cell says:</p>
        <TextList texts={props.worked.result.remarks.map((remark) => remark.message)} />
      </Show>
      <Show when={drawing()}>
        {(drawn) => (
          <CellDrawing
            drawing={drawn()}
            figureOf={number}
            title={`${props.kind.title}: ${props.example.title}`}
          />
        )}
      </Show>
      <details>
        <summary class="min-h-target py-2 text-pencil cursor-pointer">The working, with its numbers</summary>
        <For each={outputs()}>
          {({ output, result }) => (
            <Show when={output.formula}>
              {(text) => (
                <div class="working">
                  <p>
                    {output.label}: <b>{outputText(result, props.worked)}</b>
                  </p>
                  <Formula
                    text={text()}
                    name={output.name}
                    label={`${output.label} with its numbers`}
                    caption="in numbers"
                    options={{ number: (ref) => numberOf(ref, props.worked, props.example) }}
                  />
                </div>
              )}
            </Show>
          )}
        </For>
      </details>
    </>
  );
};
