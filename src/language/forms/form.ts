import type { Entry } from '../syntax/syntax.ts';

/** An entry as read, and what the sheet shows beside it so that a misreading is seen. */
export interface ReadForm {
  entry: Entry;
  echo?: string;
}
