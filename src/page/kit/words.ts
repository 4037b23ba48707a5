import type { CellKind } from '../../../cells/record/cell.ts';
import { preferences } from './preferences.ts';
import { inTradeWords } from './trade-words.ts';

/** A text for people in the words the user prefers; follows the preference. */
export const say = (text: string): string => inTradeWords(text, preferences());

const sayIn = <T extends object>(record: T, fields: ReadonlyArray<keyof T>): T => {
  const copy = { ...record };
  for (const field of fields) {
    const text = copy[field];
    if (typeof text === 'string') copy[field] = say(text) as T[keyof T];
  }
  return copy;
};

/** A kind of the library with what it says to people in the preferred words; formulas and names are its own. */
export const sayKind = (kind: CellKind): CellKind => ({
  ...sayIn(kind, ['title', 'purpose']),
  inputs: kind.inputs.map((input) => sayIn(input, ['label', 'hint'])),
  outputs: kind.outputs.map((output) => sayIn(output, ['label', 'hint'])),
  assumptions: kind.assumptions.map(say),
  cautions: kind.cautions.map((one) =>
    typeof one === 'string' ? say(one) : { ...one, text: say(one.text) },
  ),
});
