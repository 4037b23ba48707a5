import { type CodePart, type Gathered, gather, joined, missing } from '../../document/sharing/parts.ts';
import { readKept, writeKept } from '../kit/kept.ts';

/** A part of a sheet that came in several, and what it waits for. */
export interface Partly {
  waits: string;
}

/** Kept by the browser: every code that a phone scans opens a page of its own. */
const KEY = 'parts';

/** Where the browser keeps nothing, parts that are pasted one after the other still come together. */
let here: Gathered | undefined;

const before = (): Gathered | undefined => {
  const kept = readKept(KEY) as Partial<Gathered> | undefined;
  const sound =
    typeof kept === 'object' &&
    kept !== null &&
    typeof kept.sum === 'string' &&
    Number.isInteger(kept.of) &&
    typeof kept.pieces === 'object' &&
    kept.pieces !== null &&
    Object.values(kept.pieces).every((piece) => typeof piece === 'string');
  return sound ? (kept as Gathered) : here;
};

const keep = (so: Gathered | undefined): void => {
  here = so;
  writeKept(KEY, so);
};

/** Puts parts to those that came before. @returns the whole code once it is there. */
export const takeParts = (parts: readonly CodePart[]): { code: string; of: number } | Partly => {
  const so = parts.reduce<Gathered | undefined>(gather, before())!;
  const left = missing(so);
  if (left.length > 0) {
    keep(so);
    const [last] = parts.slice(-1);
    return {
      waits: `Code ${last!.k} of ${so.of} is here. Still to come: ${left.join(', ')}.`,
    };
  }
  keep(undefined);
  const code = joined(so);
  return code === undefined
    ? { waits: 'The codes do not fit together, so none of them is kept: scan all of them again.' }
    : { code, of: so.of };
};
