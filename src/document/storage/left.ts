import { uniqueId } from '../unique-id.ts';

const PREFIX = 'fitwright-left-';

/** Updates of sheets that were not stored as their page went. */
export interface Left {
  updates: Uint8Array[];
  /** Forgets them, once they are stored or their sheet is deleted for good. */
  forget(): void;
}

/**
 * Puts an update aside that is not stored yet and that the database would not take any more: what a page that goes has
 * asked of it is dropped, what it has put here stays. Where the browser keeps nothing here either, it is lost.
 */
export function leave(sheet: string, update: Uint8Array): void {
  try {
    const text = Array.from(update, (byte) => String.fromCharCode(byte)).join('');
    localStorage.setItem(`${PREFIX}${sheet}-${uniqueId()}`, text);
  } catch {
    // Refused or full: nobody is there any more to be told.
  }
}

/** Sheets of which something was put aside. */
export function sheetsLeft(): Set<string> {
  try {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
    // Behind the id stands a UUID of 36 characters.
    return new Set(keys.map((key) => key.slice(PREFIX.length, -37)));
  } catch {
    return new Set();
  }
}

/** What was put aside of a sheet, in this or another tab. */
export function leftOf(sheet: string): Left {
  const found = new Map<string, string>();
  try {
    for (const key of Object.keys(localStorage)) {
      if (key.startsWith(`${PREFIX}${sheet}-`)) found.set(key, localStorage.getItem(key) ?? '');
    }
  } catch {
    // Refused: then nothing was put aside.
  }
  return {
    updates: [...found.values()].map((text) => Uint8Array.from(text, (sign) => sign.charCodeAt(0))),
    forget() {
      for (const key of found.keys()) localStorage.removeItem(key);
    },
  };
}
