import { expect, it } from 'vitest';
import { type CellRecord, MAX_CHARACTERS, MAX_LINES } from '../../shared/sheet/format.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { overfull, roomFor, roomIn } from '../../src/document/room.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { bushJob } from './sample.ts';

const remarks = (n: number, note = ''): CellRecord[] =>
  Array.from({ length: n }, (_, k) => ({ id: `r${k}`, role: 'remark', ...(note && { note }) }));
const readable = (cells: CellRecord[]) => 'file' in readSheet(writeSheet({ ...bushJob(), cells }));

it('a sheet is made as long as one is read, and no longer', () => {
  const full = { ...bushJob(), cells: remarks(MAX_LINES) };
  expect(readable(full.cells)).toBe(true);
  expect(roomIn(full)).toBeUndefined();
  expect(overfull(MAX_LINES)).toBeUndefined();
  const sheet = SheetDocument.fromFile({ ...full, cells: remarks(MAX_LINES - 2) });
  expect(roomFor(sheet, 2)).toBeUndefined();
  expect(roomFor(sheet, 3)?.message).toMatch(/at most 10,000 lines; this one has 9,998, and 3 more/);
  const more = remarks(MAX_LINES + 1);
  expect(readable(more)).toBe(false);
  expect(roomIn({ ...full, cells: more })?.message).toMatch(/with these it would have 10,001/);
  expect(overfull(MAX_LINES + 1)).toMatch(/Cut 1 of its lines/);
});

it('nor with more text than a file may have', () => {
  const sheet = SheetDocument.fromFile({ ...bushJob(), cells: remarks(10, 'x'.repeat(1_000_000)) });
  expect(roomFor(sheet, 1, 9_000_000)).toBeUndefined();
  expect(roomFor(sheet, 1, 11_000_000)?.message).toMatch(/at most 20 MB.*would have 21\.0 MB/);
  const most = remarks(20, 'x'.repeat(MAX_CHARACTERS / 20));
  expect(readable(most)).toBe(false);
  expect(roomIn({ ...bushJob(), cells: most })?.message).toMatch(/at most 20 MB/);
});
