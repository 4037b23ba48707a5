import { createEffect, createMemo, createSignal, Match, on, Show, Switch } from 'solid-js';
import { formatNumber, formatQuantity } from '../../../shared/quantities/figures.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { AskedQuestion, Offered } from '../../engine/workback/question.ts';
import { EntryField } from '../entry/entry-field.tsx';
import { usesComma, writtenOut } from '../kit/decimal-mark.ts';
import { Part } from '../kit/part.tsx';
import { SelectField } from '../kit/select-field.tsx';
import { useSheet } from '../state/context.ts';
import { createTried } from './tried.ts';
import { WorkedBack } from './worked-back.tsx';

/** Where a figure may be wanted, by what its line has limits for. */
const PLACES = [
  { value: 'middle', label: 'in the middle of its limits', needs: ['lower', 'upper'] },
  { value: 'lower limit', label: 'just within its lower limit, spread and all', needs: ['lower'] },
  { value: 'upper limit', label: 'just within its upper limit, spread and all', needs: ['upper'] },
  { value: 'wear limit', label: 'just within its wear limit, spread and all', needs: ['wear'] },
] as const;

/** Sizes that can be made, as they are offered for a length. */
const MADE = {
  in: ['0.0005 in', '0.001 in', '1/64 in'],
  mm: ['0.005 mm', '0.01 mm', '0.1 mm'],
} as const;

const LISTED = { in: '1 in; 1 1/8 in; 1 1/4 in', mm: '25 mm; 28 mm; 30 mm' } as const;
/** One of sizes that are listed: bars, shims, blocks. */
const STOCK = 'stock';

const keyOf = ({ cell, field }: Pick<Offered, 'cell' | 'field'>): string => `${cell} ${field}`;

/** Works the figure of a line back to one of the inputs that move it. */
export default function WorkBackPart(props: { cell: string; output: string }) {
  const { sheet } = useSheet();
  const [place, setPlace] = createSignal('');
  const [value, setValue] = createSignal('');
  const [chosen, setChosen] = createSignal('');
  const [between, setBetween] = createSignal('');
  const [made, setMade] = createSignal('');
  /** Sizes at hand, where it is to be one of them. */
  const [stock, setStock] = createSignal('');
  const steps = () => (made() === STOCK ? stock() : made());

  const record = () => sheet.line(props.cell)?.record;
  const shape = () => sheet.shape(props.cell, props.output);
  const limits = () => shape()?.limits;
  /** A reading stays what it is, and a number that is given is no more than itself. */
  const isMovable = () => {
    const { role, entry = '' } = record() ?? {};
    if (role === 'measured' || role === undefined) return false;
    return (
      role === 'cell' || role === 'worked' || entry.trimStart().startsWith('=') || limits() !== undefined
    );
  };
  const places = createMemo(() => {
    const has = limits();
    return has ? PLACES.filter(({ needs }) => needs.every((one) => has[one] !== undefined)) : [];
  });
  const want = () => place() || value().trim();
  const figure = () => ({ cell: props.cell, output: props.output });

  const inputs = createTried<'inputs'>(sheet, () =>
    want() === '' ? undefined : { ask: 'inputs', figure: figure(), want: want() },
  );
  const offers = () => {
    const now = inputs.state();
    return now.is === 'there' ? now.answer : now.is === 'running' ? now.before : undefined;
  };
  const input = createMemo(() => offers()?.inputs.find((one) => keyOf(one) === chosen()));
  const asked = (): ({ ask: 'work-back' } & AskedQuestion) | undefined => {
    const one = input();
    return one && want() !== ''
      ? {
          ask: 'work-back',
          figure: figure(),
          want: want(),
          change: { cell: one.cell, field: one.field },
          between: between(),
          steps: one.isChoice ? '' : steps(),
        }
      : undefined;
  };
  const back = createTried<'work-back'>(sheet, asked);

  const wanted = createMemo(() => JSON.stringify([want(), figure().cell, figure().output]));
  // As soon as it is said where it is wanted, what may move it is offered; the likeliest is tried at once.
  createEffect(
    on(wanted, () => {
      if (want() !== '') void inputs.run();
    }),
  );
  createEffect(
    on(offers, (found) => {
      const first = found?.inputs[0];
      if (first && !found.inputs.some((one) => keyOf(one) === chosen())) choose(keyOf(first));
      if (first) void back.run();
    }),
  );
  const choose = (key: string) => {
    setBetween('');
    setChosen(key);
  };

  const unit = () => {
    const one = input();
    return one && displayUnit(one.quantity, sheet.state.units, one.display);
  };
  const answer = () => {
    const now = back.state();
    return now.is === 'there' ? now.answer : now.is === 'running' ? now.before : undefined;
  };
  const searched = () => {
    const [range, of] = [answer()?.between, unit()];
    const options = { comma: usesComma() };
    return range && of
      ? `${formatNumber(range[0], of, options)} .. ${formatQuantity(range[1], of, options)}`
      : '';
  };
  const failed = () => {
    for (const { state } of [inputs, back]) {
      const now = state();
      if (now.is === 'failed') return now.message;
    }
    return undefined;
  };
  const isRunning = () => inputs.state().is === 'running' || back.state().is === 'running';
  const titleOf = ({ label, isToCut, text }: Offered) =>
    `${label}${text ? `, ${writtenOut(text)}` : ''}${isToCut ? ', still to be cut' : ''}`;
  return (
    <Show when={isMovable() && shape()}>
      <Part title="Make it come to">
        <div class="work-back grid gap-2">
          <div class="fields">
            <Show when={places().length > 0}>
              <SelectField
                label="Where it is wanted"
                value={place()}
                options={[{ value: '', label: 'at a value' }, ...places()]}
                onCommit={setPlace}
              />
            </Show>
            <Show when={place() === ''}>
              <EntryField
                label="Value wanted"
                spot={{
                  cell: props.cell,
                  field: 'wanted',
                  kind: 'entry',
                  quantity: shape()?.quantity,
                  role: 'given',
                }}
                value={value()}
                onCommit={setValue}
              />
            </Show>
            <Show when={want() !== '' && (offers()?.inputs.length ?? 0) > 0}>
              <SelectField
                label="What may move for it"
                value={chosen()}
                options={offers()!.inputs.map((one) => ({ value: keyOf(one), label: titleOf(one) }))}
                onCommit={choose}
              />
              <Show when={input() && !input()!.isChoice}>
                <EntryField
                  label="Look for it from .. to"
                  spot={{
                    cell: input()!.cell,
                    field: 'looked-through',
                    kind: 'entry',
                    quantity: input()!.quantity,
                    role: 'given',
                  }}
                  value={between()}
                  placeholder={searched()}
                  onCommit={setBetween}
                />
                <Show when={input()!.quantity === 'length'}>
                  <SelectField
                    label="Sizes that can be made"
                    value={made()}
                    options={[
                      { value: '', label: 'any' },
                      ...MADE[sheet.state.units.length].map((one) => ({
                        value: one,
                        label: `steps of ${writtenOut(one)}`,
                      })),
                      { value: 'drills', label: 'drills' },
                      { value: STOCK, label: 'sizes at hand' },
                    ]}
                    onCommit={setMade}
                  />
                  <Show when={made() === STOCK}>
                    <EntryField
                      label="Sizes at hand"
                      spot={{
                        cell: input()!.cell,
                        field: 'sizes-at-hand',
                        kind: 'entry',
                        quantity: input()!.quantity,
                        role: 'measured',
                      }}
                      value={stock()}
                      placeholder={writtenOut(LISTED[sheet.state.units.length])}
                      onCommit={setStock}
                    />
                  </Show>
                </Show>
              </Show>
            </Show>
          </div>
          <Switch>
            <Match when={want() === ''}>
              <p class="caption">Say where it is wanted: what may move for it is then offered.</p>
            </Match>
            <Match when={failed()}>
              {(message) => <p role="alert">It could not be worked back: {message()}</p>}
            </Match>
            <Match when={isRunning() && !answer()}>
              <p role="status">Working it back.</p>
            </Match>
            <Match when={offers()?.inputs.length === 0 && offers()?.reason}>{(why) => <p>{why()}</p>}</Match>
            <Match when={input() && answer()}>
              {(found) => (
                <WorkedBack figure={figure()} input={input()!} answer={found()} isWaiting={isRunning()} />
              )}
            </Match>
          </Switch>
        </div>
      </Part>
    </Show>
  );
}
