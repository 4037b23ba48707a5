import { createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import { valueText } from '../../engine/window/words.ts';
import { EntryField } from '../entry/entry-field.tsx';
import { usesComma } from '../kit/decimal-mark.ts';
import { late } from '../kit/late.tsx';
import { Part } from '../kit/part.tsx';
import { SelectField } from '../kit/select-field.tsx';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { createTried } from './tried.ts';
import { type Place, placesOf, whyNone } from './window-places.ts';

const WindowAnswer = late('What the window is', () => import('./window-answer.tsx'));

/** How far an input of the line may go with every check that depends on it still holding. */
export default function WindowPart(props: { cell: string }) {
  const { sheet } = useSheet();
  const library = useLibrary();
  const places = createMemo(() => placesOf(sheet, library(), props.cell));
  const [field, setField] = createSignal<string>();
  const [between, setBetween] = createSignal('');
  const place = (): Place | undefined => places().find((one) => one.field === field()) ?? places()[0];
  const asked = () => {
    const one = place();
    return one && { ask: 'window' as const, cell: one.cell, field: one.field, between: between() };
  };
  const tried = createTried<'window'>(sheet, asked);
  const answer = () => {
    const now = tried.state();
    return now.is === 'there' ? now.answer : now.is === 'running' ? now.before : undefined;
  };
  const found = () => {
    const now = answer();
    return now?.is === 'found' ? now : undefined;
  };
  const searched = () => {
    const one = found();
    return one
      ? `${valueText(one, one.searched.low, usesComma())} .. ${valueText(one, one.searched.high, usesComma())}`
      : '';
  };
  const failed = () => {
    const now = tried.state();
    return now.is === 'failed' ? now.message : undefined;
  };
  return (
    <Show
      when={place()}
      fallback={
        <Show when={whyNone(sheet.line(props.cell)?.record)}>
          {(why) => (
            <Part title="How far it may go">
              <p>{why()}</p>
            </Part>
          )}
        </Show>
      }
    >
      {(at) => (
        <Part title="How far it may go" open>
          <div class="window-part grid gap-2">
            <Show when={places().length > 1}>
              <SelectField
                label="Input"
                value={at().field}
                options={places().map((one) => ({ value: one.field, label: one.title }))}
                onCommit={(one) => {
                  setBetween('');
                  setField(one);
                }}
              />
            </Show>
            <Switch>
              <Match when={tried.state().is === 'running' && !answer()}>
                <p role="status">Working it out.</p>
              </Match>
              <Match when={!answer()}>
                <p class="along">
                  <button type="button" disabled={sheet.state.rev === 0} onClick={() => void tried.run()}>
                    Work out its window
                  </button>
                </p>
              </Match>
            </Switch>
            <Show when={answer() && !(answer() as { stays?: boolean }).stays}>
              <EntryField
                label="Look through from .. to"
                spot={{
                  cell: at().cell,
                  field: 'window-range',
                  kind: 'entry',
                  quantity: at().quantity,
                  role: 'given',
                }}
                value={between()}
                placeholder={searched()}
                onCommit={setBetween}
              />
            </Show>
            <Show when={failed()}>
              {(message) => <p role="alert">The window could not be worked out: {message()}</p>}
            </Show>
            <Show when={answer()}>{(one) => <WindowAnswer answer={one()} of={place()} />}</Show>
          </div>
        </Part>
      )}
    </Show>
  );
}
