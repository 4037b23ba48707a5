import type { EntrySpot } from './spot.ts';

const PREFIX = 'fitwright-typed-';

/** What was being typed in an entry as its page went, and what stood there. */
export interface TypedAside {
  cell: string;
  field: string;
  text: string;
}

/**
 * Puts aside what is typed and not entered: half a figure must not become one, nor be lost. Where the browser keeps
 * nothing, it is lost.
 * @param sheet id of the sheet
 */
export const putTypedAside = (sheet: string, { cell, field }: EntrySpot, text: string): void => {
  try {
    localStorage.setItem(PREFIX + sheet, JSON.stringify({ cell, field, text } satisfies TypedAside));
  } catch {
    // Refused or full: nobody is there any more to be told.
  }
};

/** What was put aside of a sheet; it is given once. */
export const takeTypedAside = (sheet: string): TypedAside | undefined => {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(PREFIX + sheet) ?? 'null');
    localStorage.removeItem(PREFIX + sheet);
    const sound = (one: unknown): one is TypedAside =>
      typeof one === 'object' &&
      one !== null &&
      ['cell', 'field', 'text'].every((key) => typeof (one as Record<string, unknown>)[key] === 'string');
    return sound(kept) ? kept : undefined;
  } catch {
    return undefined;
  }
};
