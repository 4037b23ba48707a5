import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { LengthUnit } from '../../document/sharing/own-units.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import { preferences } from '../kit/preferences.ts';
import { loadLibrary } from './library.ts';

/** A sheet from elsewhere, and a word where it could not be read in other lengths without changing a value. */
export interface OwnSheet {
  file: SheetFile;
  word?: string;
}

export const inLengths = async (file: SheetFile, length: LengthUnit): Promise<OwnSheet> => {
  if (length === file.units.length) return { file };
  const [{ inOwnUnits }, { quantityAt }, library] = await Promise.all([
    import('../../document/sharing/own-units.ts'),
    import('./quantity-at.ts'),
    loadLibrary(kindsOf(file.cells)),
  ]);
  const { file: own, kept } = inOwnUnits(file, length, quantityAt(library));
  if (kept.length === 0) return { file: own };
  const names = kept.slice(0, 3).map((cell) => cell.label || cell.name || 'a line');
  const more = kept.length > 3 ? ` and ${kept.length - 3} more` : '';
  return {
    file: own,
    word: `The sheet stays in ${file.units.length === 'in' ? 'inches' : 'millimetres'}: ${names.join(', ')}${more} hold numbers without a unit, which would change with the sheet's.`,
  };
};

/** In the lengths this shop prefers. */
export const preferred = async (file: SheetFile): Promise<OwnSheet> => {
  const { length } = preferences();
  return length === 'sheet' ? { file } : inLengths(file, length);
};
