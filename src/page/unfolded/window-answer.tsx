import { Show } from 'solid-js';
import type { WindowFound, WindowPiece } from '../../engine/window/answer.ts';
import type { Answers } from '../../engine/window/messages.ts';
import { endText, pieceText, valueText } from '../../engine/window/words.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { late } from '../kit/late.tsx';
import { LimitBar } from '../kit/limit-bar.tsx';
import { CheckList } from './check-list.tsx';
import type { Place } from './window-places.ts';

const MapPart = late('The map', () => import('./map-part.tsx'));

/** A window, or why there is none; what was left out of it; and the map of the input with another one. */
export default function WindowAnswer(props: { answer: Answers['window']; of: Place | undefined }) {
  const found = () => (props.answer.is === 'found' ? props.answer : undefined);
  const why = () => (props.answer.is === 'none' ? props.answer.why : undefined);
  const stays = () => 'stays' in props.answer && props.answer.stays === true;
  return (
    <>
      <Show when={found()}>{(one) => <WindowSaid found={one()} />}</Show>
      <Show when={why()}>{(words) => <p>{words()}</p>}</Show>
      <Show when={props.answer.leftOut.length > 0}>
        <div class="caption">
          Left out, for they fail or wait whatever it is:
          <CheckList checks={props.answer.leftOut} />
        </div>
      </Show>
      <Show when={!stays()}>
        <MapPart of={props.of} />
      </Show>
    </>
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
