import { fingerprint, fingerprintOfEdition1, isOfEdition1 } from '../../../shared/sheet/fingerprint.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Printer } from '../storage/printer.ts';
import { settle, type TextReader } from './settle.ts';

/** @param readerOf what the texts of a sheet need to be read: the kinds of cell it uses; rejects where one cannot be had. */
export const printer = (readerOf: (file: SheetFile) => Promise<TextReader>): Printer => {
  const print = async (file: SheetFile): Promise<string> => {
    let reader: TextReader;
    try {
      reader = await readerOf(file);
    } catch {
      // Without its kinds a sheet cannot be read as a whole; what edition 1 says of it is true all the same.
      return fingerprintOfEdition1(file);
    }
    return fingerprint(settle(file, reader));
  };
  return {
    print,
    isOf: async (said, file) =>
      said === (isOfEdition1(said) ? fingerprintOfEdition1(file) : await print(file)),
  };
};
