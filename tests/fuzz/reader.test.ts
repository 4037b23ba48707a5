import { expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { rowOf } from '../../src/document/storage/row.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { printOf as fingerprint } from '../document/prints.ts';
import { feed, nothingPolluted, READING } from './inputs.ts';
import { sheetTexts } from './sheets.ts';

it('whatever comes as a file is read or refused in words, and what is read can be kept', async () => {
  let read = 0;
  await feed(
    'reader of files',
    11,
    sheetTexts,
    (text) => {
      const result = readSheet(text);
      if ('message' in result) {
        expect(result.message).toMatch(/\S+ \S+/);
        return;
      }
      const sheet = SheetDocument.fromFile(result.file);
      return () => {
        read += 1;
        const print = fingerprint(result.file);
        const again = readSheet(writeSheet(result.file));
        if (!('file' in again) || fingerprint(again.file) !== print)
          throw new Error('reads otherwise once it is written');
        if (sheet.order().length !== result.file.cells.length) throw new Error('a cell is lost');
        sheet.toFile();
        // The shop's list, which every opening writes.
        rowOf(sheet, 0);
        sheet.destroy();
        nothingPolluted();
      };
    },
    READING,
  );
  // Else the inputs would test nothing but the refusals.
  expect(read).toBeGreaterThan(0);
});

it('whatever was read is worked out, or said in words why not', async () => {
  await feed('figures of files', 11, sheetTexts, (text) => {
    const result = readSheet(text);
    if ('message' in result) return;
    for (const { problems } of computeSheet(result.file, library).cells)
      for (const { message } of problems) expect(message).toMatch(/\S/);
    nothingPolluted();
  });
});
