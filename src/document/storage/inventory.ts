/** Kept beside the database, so that what it loses can be named: one entry a sheet, its title. */
const PREFIX = 'fitwright-sheet-';

/** A sheet that was here. */
export interface Known {
  id: string;
  title: string;
}

/**
 * Which sheets there are, apart from the database that holds them. A browser that drops or empties the database leaves
 * no trace of them there.
 */
export class Inventory {
  private readonly noted = new Map<string, string>();

  note({ id, title }: Known): void {
    if (this.noted.get(id) === title) return;
    try {
      localStorage.setItem(PREFIX + id, title);
      this.noted.set(id, title);
    } catch {
      // Refused or full: then a loss is told of by a page that is open, and not at the next opening.
    }
  }

  forget(id: string): void {
    this.noted.delete(id);
    try {
      localStorage.removeItem(PREFIX + id);
    } catch {
      // Refused: then nothing was noted.
    }
  }

  /** Writes them all again: the browser may have taken this away too. */
  renew(sheets: readonly Known[]): void {
    this.noted.clear();
    for (const sheet of sheets) this.note(sheet);
  }

  /** All that were noted, in this or another tab. */
  known(): Known[] {
    try {
      return Object.keys(localStorage).flatMap((key) =>
        key.startsWith(PREFIX)
          ? [{ id: key.slice(PREFIX.length), title: localStorage.getItem(key) ?? '' }]
          : [],
      );
    } catch {
      return [];
    }
  }
}
