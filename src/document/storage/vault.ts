import type { ListRow, RowChange } from './row.ts';

/** A sheet as it stood, kept as a canonical file. */
export interface Revision {
  sheet: string;
  /** Counts from 1 within its sheet. */
  n: number;
  time: number;
  label: string;
  fingerprint: string;
  /** The file, as text. */
  text: string;
}

/** What of a sheet is stored. */
export interface Stored {
  updates: Uint8Array[];
  /** Names what the updates are built on; absent where there is nothing, or where an older edition stored it. */
  base?: string | undefined;
}

/** One more update of a sheet. */
export interface Addition {
  update: Uint8Array;
  /** What the update is built on, as the one who stores it knows; absent for a sheet that is new. */
  base: string | undefined;
  /** The whole sheet: stored in place of the update where what it is built on is gone. */
  whole(): Uint8Array;
}

interface Appended {
  /** How many updates the sheet has now. */
  count: number;
  /** What the next update builds on; another than that of the addition where the whole sheet had to be stored. */
  base: string | undefined;
}

/**
 * Where a shop keeps its things. Each call is one transaction, done when its promise is; it rejects with the browser's
 * error when nothing of it was stored.
 */
export interface Vault {
  rows(): Promise<ListRow[]>;
  /** Changes a row as it stands now; `undefined` takes it away. */
  changeRow(id: string, change: RowChange): Promise<ListRow | undefined>;
  updates(sheet: string): Promise<Stored>;
  /**
   * Stores one more update of a sheet and its row, both or none. That what it is built on is there is read in the same
   * transaction.
   */
  append(sheet: string, addition: Addition, change: RowChange): Promise<Appended>;
  /** Puts one update in place of all that a sheet has. */
  compact(sheet: string, merge: (updates: Uint8Array[]) => Uint8Array): Promise<void>;
  /** Takes a sheet away with everything that belongs to it. */
  discard(sheet: string): Promise<void>;
  addRevision(revision: Omit<Revision, 'n'>): Promise<Revision>;
  revisions(sheet: string): Promise<Revision[]>;
  setting(key: string): Promise<unknown>;
  settings(): Promise<Array<[string, unknown]>>;
  /** Changes a setting as it stands now. */
  changeSetting(key: string, change: (now: unknown) => unknown): Promise<void>;
  /** Called when the browser has taken the connection away: what was stored may be gone. @returns a function that ends it. */
  onLoss(listener: () => void): () => void;
  close(): void;
}
