import type { Movement } from '../../../cells/record/cell.ts';
import type { Problem } from '../../../shared/problem.ts';
import type { Span, ValueType } from '../syntax/syntax.ts';

/** What a function sees of an argument while types are checked. */
export interface ArgType extends Span {
  type: ValueType;
  /** As written, for messages. */
  text: string;
  /** A plain number without unit: a literal, or arithmetic of such. */
  bareNumber?: boolean;
  /** The literal 0, which is the same in every unit (but not on a temperature scale). */
  zero?: boolean;
  /** Value where it is a constant of plain numbers. */
  constant?: number;
}

export type Scalar = number | boolean;
export type Outcome = Scalar | { message: string };

/** A function of formulas. `compute` is pure, takes SI numbers and never throws; it gives a message in place of a result. */
export interface SheetFunction {
  name: string;
  /** One line for the completion list. */
  purpose: string;
  /** Names of the arguments in order, the last repeated where `max` is Infinity. */
  takes: readonly string[];
  args: { min: number; max: number };
  type: (args: readonly ArgType[]) => ValueType | Problem;
  compute: (...args: Scalar[]) => Outcome;
  /** Of a function of the trade: how it moves with its numbers. */
  movement?: Movement | undefined;
}

/** Numbers in, number out; logical arguments do not reach these, the check has refused them. */
export const numeric = (compute: (...args: number[]) => Outcome): ((...args: Scalar[]) => Outcome) =>
  compute as (...args: Scalar[]) => Outcome;
