import { library } from '../../cells/catalogue.ts';
import { handbook } from '../../cells/handbook.ts';
import { fingerprint } from '../../shared/sheet/fingerprint.ts';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { printer as printerOf } from '../../src/document/sharing/printer.ts';
import { settle, type TextReader } from '../../src/document/sharing/settle.ts';
import { quantityAt } from '../../src/page/state/quantity-at.ts';

export const reader: TextReader = { quantityAt: quantityAt(library), handbook };

/** As the page takes fingerprints, with the whole library at hand. */
export const printer = printerOf(async () => reader);

export const printOf = (file: SheetFile): string => fingerprint(settle(file, reader));
