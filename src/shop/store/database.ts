/** A value bound to a statement, or read by one. Times and numbers fit a double. */
export type Value = string | number | Uint8Array | null;
export type Row = Readonly<Record<string, unknown>>;

/** Runs one statement, whose values stand as `?`. */
export type Run = (sql: string, ...values: Value[]) => Promise<Row[]>;

/** A database of SQL, embedded or shared. */
export interface Database {
  /** One transaction: what `work` runs is committed when it has resolved and the promise with it, or nothing of it is. */
  transaction<T>(work: (run: Run) => Promise<T>): Promise<T>;
  /** What the dialect calls a whole number counted up by itself, a byte string, and a whole number of 64 bits. */
  readonly words: { counted: string; bytes: string; whole: string };
  /** Behind a SELECT that is followed by a change of the same rows. */
  readonly forUpdate: string;
  /** Whether an error says that there is no room. */
  isFull(error: unknown): boolean;
  close(): Promise<void>;
}

/** Bytes as the rows of either database hold them. */
export const bytesOf = (value: unknown): Uint8Array => {
  if (value instanceof ArrayBuffer) return new Uint8Array(value);
  if (value instanceof Uint8Array) return value;
  throw new TypeError('The database holds no bytes where it must.');
};
