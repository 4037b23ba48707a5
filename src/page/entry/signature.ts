import type { TradeFunction } from '../../../cells/record/cell.ts';
import { quantityKind } from '../../../shared/quantities/quantities.ts';
import { generalFunctions } from '../../language/functions/functions.ts';

/** How a function is called: what it is for, its arguments by name, and what each may be. */
export interface Signature {
  name: string;
  purpose: string;
  takes: ReadonlyArray<{ name: string; kind: string }>;
  /** The last argument may be given again and again. */
  more: boolean;
}

/** What the arguments of the general functions may be, by the names they have there. */
const KINDS: Readonly<Record<string, string>> = {
  number: 'a plain number',
  base: 'a plain number',
  power: 'a plain number',
  places: 'a plain whole number',
  angle: 'an angle',
  comparison: 'a comparison, such as a > b',
  value: 'any quantity',
  divisor: 'the same kind as the value',
  step: 'the same kind as the value',
  // biome-ignore lint/suspicious/noThenProperty: an argument's name
  then: 'any quantity',
  otherwise: 'the same kind as the other way',
  x: 'any quantity',
  y: 'the same kind as x',
  input: 'the name of an input',
};

const kindOf = (argument: TradeFunction['takes'][number]): string =>
  'text' in argument
    ? 'a text in quotes, or a choice'
    : argument.quantity === 'number'
      ? 'a plain number'
      : (quantityKind(argument.quantity)?.label ?? argument.quantity);

/** Signatures by name: the general functions and those of the library. */
export const signaturesOf = (trade: readonly TradeFunction[]): ReadonlyMap<string, Signature> =>
  new Map(
    [
      ...generalFunctions.map(({ name, purpose, takes, args }) => ({
        name,
        purpose,
        takes: takes.map((argument) => ({ name: argument, kind: KINDS[argument] ?? 'any quantity' })),
        more: args.max === Number.POSITIVE_INFINITY,
      })),
      ...trade.map(({ name, purpose, takes }) => ({
        name,
        purpose,
        takes: takes.map((argument) => ({ name: argument.name, kind: kindOf(argument) })),
        more: false,
      })),
    ].map((signature) => [signature.name, signature] as const),
  );

/** Which of its arguments a place is: the last again where it repeats, none where there are too many. */
export const argumentOf = ({ takes, more }: Signature, at: number): number | undefined =>
  at < takes.length ? at : more && takes.length > 0 ? takes.length - 1 : undefined;
