import { For } from 'solid-js';
import { usesComma } from '../kit/decimal-mark.ts';
import type { PadKey } from './pad.ts';

const KEYS: ReadonlyArray<readonly PadKey[]> = [
  ['7', '8', '9', 'back'],
  ['4', '5', '6', '-'],
  ['1', '2', '3', '/'],
  ['.', '0', ' '],
];

const NAMES: Partial<Record<PadKey, string>> = {
  back: 'Take the last digit away',
  '-': 'Change the sign',
  '/': 'Stroke of a fraction',
  ' ': 'Blank between a whole number and its fraction',
};

export interface PadKeysProps {
  onKey: (key: PadKey) => void;
  onTake: () => void;
  canTake: boolean;
  takeWord: string;
}

/** The keypad: digits as on a calculator, decimal mark, fraction stroke and blank, and the key that takes the reading. */
export const PadKeys = (props: PadKeysProps) => {
  const face = (key: PadKey) => (key === '.' ? (usesComma() ? ',' : '.') : key);
  return (
    <fieldset class="pad grid grid-cols-[repeat(4,1fr)] gap-1">
      <legend class="unseen">Keypad</legend>
      <For each={KEYS.flat()}>
        {(key) => (
          <button
            type="button"
            class="min-h-key p-0 text-head"
            aria-label={key === '.' ? 'Decimal mark' : NAMES[key]}
            // The box of the reading keeps the focus, so that a keyboard goes on too.
            onPointerDown={(event) => event.preventDefault()}
            onClick={() => props.onKey(key)}
          >
            {key === 'back' ? <BackSign /> : key === '-' ? '±' : key === ' ' ? '⎵' : face(key)}
          </button>
        )}
      </For>
      <button
        type="button"
        class="main min-h-key p-0 text-figure font-bold disabled:(bg-paper text-soft)"
        disabled={!props.canTake}
        onPointerDown={(event) => event.preventDefault()}
        onClick={() => props.onTake()}
      >
        {props.takeWord}
      </button>
    </fieldset>
  );
};

const BackSign = () => (
  <svg viewBox="0 0 32 24" width="28" height="21" aria-hidden="true">
    <path d="M10 3h19v18h-19l-8 -9zM15 8l8 8M23 8l-8 8" fill="none" stroke="currentColor" stroke-width="2" />
  </svg>
);
