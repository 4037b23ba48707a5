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

/**
 * Where a shop keeps its things. Each call is one transaction, done when its promise is; it rejects with the browser's
 * error when nothing of it was stored.
 */
export interface Vault {
  rows(): Promise<ListRow[]>;
  /** Changes a row as it stands now; `undefined` takes it away. */
  changeRow(id: string, change: RowChange): Promise<ListRow | undefined>;
  updates(sheet: string): Promise<Uint8Array[]>;
  /** Stores one more update of a sheet and its row, both or none. @returns how many updates the sheet has now. */
  append(sheet: string, update: Uint8Array, change: RowChange): Promise<number>;
  /** Puts one update in place of all that a sheet has. */
  compact(sheet: string, merge: (updates: Uint8Array[]) => Uint8Array): Promise<void>;
  /** Takes a sheet away with everything that belongs to it. */
  discard(sheet: string): Promise<void>;
  addRevision(revision: Omit<Revision, 'n'>): Promise<Revision>;
  revisions(sheet: string): Promise<Revision[]>;
  setting(key: string): Promise<unknown>;
  settings(): Promise<Array<[string, unknown]>>;
  setSetting(key: string, value: unknown): Promise<void>;
  close(): void;
}
