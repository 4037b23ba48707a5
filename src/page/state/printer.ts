import type { SettledSheet } from '../../../shared/sheet/fingerprint.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { printer as printerOf } from '../../document/sharing/printer.ts';
import type { TextReader } from '../../document/sharing/settle.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import { loadLibrary } from './library.ts';

/** What reading a sheet's texts needs, with the kinds of cell it uses fetched. */
const readerOf = async (file: SheetFile): Promise<TextReader> => {
  const kinds = kindsOf(file.cells);
  const [{ quantityAt }, { handbook }, library] = await Promise.all([
    import('./quantity-at.ts'),
    import('../../../cells/handbook.ts'),
    loadLibrary(kinds),
  ]);
  if (kinds.some((kind) => library.lacks?.(kind)))
    throw new Error('A kind of cell of this sheet could not be fetched.');
  return { quantityAt: quantityAt(library), handbook };
};

/** Takes the fingerprints of this page's sheets. */
export const printer = printerOf(readerOf);

/** The sheet with the unit behind every number, and whether one is left without. */
export const settled = async (file: SheetFile): Promise<SettledSheet> => {
  const [{ settle }, reader] = await Promise.all([
    import('../../document/sharing/settle.ts'),
    readerOf(file),
  ]);
  return settle(file, reader);
};

/** The sheet with the unit behind every number; as it is where what that needs cannot be fetched. */
export const written = async (file: SheetFile): Promise<SheetFile> => {
  try {
    return (await settled(file)).file;
  } catch {
    return file;
  }
};
