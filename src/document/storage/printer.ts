import type { SheetFile } from '../../../shared/sheet/format.ts';

/** Takes fingerprints, and knows sheets again by those of every edition. */
export interface Printer {
  print(file: SheetFile): Promise<string>;
  /** Whether a fingerprint, whole and of any edition, is that of the sheet. */
  isOf(print: string, file: SheetFile): Promise<boolean>;
}
