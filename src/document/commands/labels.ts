import { fieldWords } from '../../../shared/sheet/field-words.ts';
import type { Editing } from '../model/editing.ts';

/** What undo says it takes back. */

export const fieldLabel = (e: Editing, id: string, path: string): string =>
  `${fieldWords(path)} of ${e.reading.title(id)}`;

export const linesLabel = (e: Editing, what: string, ids: readonly string[]): string =>
  `${what} of ${ids.length === 1 ? e.reading.title(ids[0]!) : `${ids.length} lines`}`;
