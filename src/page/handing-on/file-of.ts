import type { SheetFile } from '../../../shared/sheet/format.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import type { Revision } from '../../document/storage/vault.ts';

/** The sheet as a revision keeps it; undefined where it cannot be read. */
export const fileOf = (revision: Revision): SheetFile | undefined => {
  const read = readSheet(revision.text);
  return 'file' in read ? read.file : undefined;
};
