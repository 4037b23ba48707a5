import { For, Show } from 'solid-js';
import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { FigurePlace } from '../../engine/trial/place.ts';
import type { Answer, Consequences, Offered, Solution } from '../../engine/workback/question.ts';
import { usesComma, writtenOut } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { CheckList } from './check-list.tsx';

interface WorkedBackProps {
  figure: FigurePlace;
  input: Offered;
  answer: Answer;
  /** Another question is under way: what stands here is of the one before. */
  isWaiting: boolean;
}

/** Every answer, with what each makes of the figure and of the checks; one press takes one into the sheet. */
export const WorkedBack = (props: WorkedBackProps) => {
  const { sheet, notices } = useSheet();
  /** Where the answers go: the input they were worked out for. */
  const take = (text: string) => {
    const { cell, field, label } = props.input;
    sheet.document.setField(cell, field, text);
    notices.say(`${label} is now ${writtenOut(text)}.`, {
      label: 'Undo',
      run: () => sheet.document.undo(),
    });
  };
  const all = () => props.answer.solutions;
  return (
    <div class="worked-back grid gap-3" aria-busy={props.isWaiting}>
      <Show when={props.answer.reason}>{(why) => <p>{why()}</p>}</Show>
      <Show when={all().length > 1 && !props.input.isChoice}>
        <p>{all().length} answers, each of which makes it so.</p>
      </Show>
      <Show when={props.input.isFormula && all().length > 0}>
        <p>
          {props.input.label} has a formula, which an answer takes the place of:{' '}
          <code class="whitespace-nowrap">{writtenOut(props.input.text)}</code>
        </p>
      </Show>
      <ol class="grid gap-3">
        <For each={all()}>
          {(one) => (
            <li class="grid gap-1">
              <OneAnswer {...props} one={one} onTake={take} />
              <For each={one.made}>
                {(made) => (
                  <div class="pl-3 grid gap-1">
                    <OneAnswer {...props} one={made} onTake={take} />
                  </div>
                )}
              </For>
            </li>
          )}
        </For>
      </ol>
      <Show when={props.answer.tried}>{(what) => <p class="caption">{what()}</p>}</Show>
    </div>
  );
};

const OneAnswer = (props: WorkedBackProps & { one: Solution; onTake: (text: string) => void }) => {
  const { sheet, show } = useSheet();
  const figure = () => {
    const { cell, output } = props.figure;
    return formatQuantity(props.one.figure, show.output(cell, output).unit, { comma: usesComma() });
  };
  const amount = (si: number) =>
    formatQuantity(si, displayUnit(props.input.quantity, sheet.state.units, props.input.display), {
      comma: usesComma(),
    });
  const stands = () => props.one.text === props.input.text;
  const size = () => props.one.name ?? writtenOut(props.one.text);
  return (
    <>
      <p class="along">
        <span>
          <b>{size()}</b> makes it {figure()}
          <Show when={props.one.all}>
            {(range) => (
              <>
                {' '}
                (as does all from {amount(range()[0])} to {amount(range()[1])})
              </>
            )}
          </Show>
          <Show when={props.one.isAim}>, to aim for</Show>
          <Show when={props.one.fits === false}>, not in limits</Show>
        </span>
        <Show when={!stands()} fallback={<span class="caption">It stands so.</span>}>
          <button type="button" disabled={props.isWaiting} onClick={() => props.onTake(props.one.text)}>
            {props.input.isFormula ? 'Put it in place of the formula' : 'Take it into the sheet'}
          </button>
        </Show>
      </p>
      <Show when={!stands() && props.one.checks}>{(checks) => <Then checks={checks()} />}</Show>
    </>
  );
};

/** What every check then says. */
const Then = (props: { checks: Consequences }) => {
  const turned = () =>
    props.checks.turned.map(({ before, after, ...name }) => ({
      ...name,
      words: `${after.words || 'holds'}, now ${before.words || 'holds'}`,
    }));
  const failing = () => props.checks.failing.map((one) => ({ ...one, words: one.words }));
  const others = () => props.checks.same - props.checks.failing.length;
  return (
    <div class="caption grid gap-1">
      <Show when={turned().length > 0}>
        Then says something else:
        <CheckList checks={turned()} />
      </Show>
      <Show when={failing().length > 0}>
        Still does not hold, or waits:
        <CheckList checks={failing()} />
      </Show>
      <Show when={others() > 0}>
        <span>{others() === 1 ? 'One check holds' : `${others()} checks hold`} as before.</span>
      </Show>
    </div>
  );
};
