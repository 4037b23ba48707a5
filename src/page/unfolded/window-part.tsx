import { createMemo, createSignal, Match, Show, Switch } from 'solid-js';
import type { WindowFound, WindowPiece } from '../../engine/window/answer.ts';
import { endText, pieceText, valueText } from '../../engine/window/words.ts';
import { EntryField } from '../entry/entry-field.tsx';
import { usesComma } from '../kit/decimal-mark.ts';
import { late } from '../kit/late.tsx';
import { LimitBar } from '../kit/limit-bar.tsx';
import { Part } from '../kit/part.tsx';
import { SelectField } from '../kit/select-field.tsx';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { CheckList } from './check-list.tsx';
import { createTried } from './tried.ts';
import { type Place, placesOf, whyNone } from './window-places.ts';

const MapPart = late('The map', () => import('./map-part.tsx'));

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
            <Show when={found()}>{(one) => <WindowSaid found={one()} />}</Show>
            <Show when={answer()?.is === 'none' && (answer() as { why: string }).why}>
              {(why) => <p>{why()}</p>}
            </Show>
            <Show when={answer()?.leftOut.length}>
              <div class="caption">
                Left out, for they fail or wait whatever it is:
                <CheckList checks={answer()!.leftOut} />
              </div>
            </Show>
            <Show when={answer() && !(answer() as { stays?: boolean }).stays}>
              <MapPart of={place()} />
            </Show>
          </div>
        </Part>
      )}
    </Show>
  );
}

/** A window in a bar and in words. */
const WindowSaid = (props: { found: WindowFound }) => {
  const text = (si: number) => valueText(props.found, si, usesComma());
  const range = (piece: WindowPiece) => pieceText(props.found, piece, usesComma());
  /** The piece that holds the value as it stands, or the first of the others. */
  const shown = () => props.found.piece ?? props.found.others[0]!;
  const elsewhere = () => props.found.others.filter((one) => one !== shown());
  const now = () => props.found.value;
  const head = () => {
    const value = now();
    if (value === undefined) return 'Every check holds from';
    return props.found.piece
      ? `Now ${text(value)}; every check holds from`
      : `Now ${text(value)}, where not every check holds. They all do from`;
  };
  return (
    <>
      <p>
        {head()} <b>{range(shown())}</b>.
      </p>
      <div class="max-w-20rem">
        <LimitBar
          lower={shown().low.at}
          upper={shown().high.at}
          lowerText={text(shown().low.at)}
          upperText={text(shown().high.at)}
          {...(now() === undefined ? {} : { value: now()! })}
          {...(props.found.metalOn ? { metalOn: props.found.metalOn } : {})}
          words={`Window from ${range(shown())}${now() === undefined ? '' : `, now ${text(now()!)}`}`}
        />
      </div>
      <p>{endText(props.found, 'low', shown().low, usesComma())}</p>
      <CheckList checks={shown().low.closedBy} />
      <p>{endText(props.found, 'high', shown().high, usesComma())}</p>
      <CheckList checks={shown().high.closedBy} />
      <Show when={elsewhere().length > 0}>
        <p>All hold elsewhere too: {elsewhere().map(range).join('; ')}.</p>
      </Show>
      <p class="caption">
        {props.found.checks.length === 1 ? 'One check' : `${props.found.checks.length} checks`} worked out in
        full at either end; looked through from {text(props.found.searched.low)} to{' '}
        {text(props.found.searched.high)}.
      </p>
    </>
  );
};
