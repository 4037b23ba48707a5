import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fingerprintOfEdition1 as fingerprint } from '../../../shared/sheet/fingerprint.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import { readCode } from '../../../src/document/sharing/code.ts';
import { SheetDocument } from '../../../src/document/sheet-document.ts';

/**
 * Sheets as every version so far wrote them: as a file, as a code, and as the update a browser has stored. Files here are
 * added, never changed. One that is not read the same any more means that somebody's work does not open.
 */
const folder = new URL('../frozen/', import.meta.url);
const at = (name: string): string => readFileSync(new URL(name, folder), 'utf8').trim();
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace(/\.json$/, ''));

describe.each(names)('%s', (name) => {
  const print = at(`${name}.fingerprint`);

  it('opens as a file, with the fingerprint it had', () => {
    const read = readSheet(at(`${name}.json`));
    expect('file' in read && fingerprint(read.file)).toBe(print);
  });

  it('opens as a code', async () => {
    const read = await readCode(at(`${name}.code`));
    expect('file' in read && fingerprint(read.file)).toBe(print);
  });

  it('opens as a browser stored it, and is written as a file again', () => {
    const sheet = new SheetDocument('frozen');
    sheet.applyUpdate(Buffer.from(at(`${name}.update`), 'base64'), 'load');
    const read = readSheet(writeSheet(sheet.toFile()));
    expect('file' in read && fingerprint(read.file)).toBe(print);
  });
});

it('there is one of the present version at least', () => {
  expect(names.some((name) => name.startsWith('version-1'))).toBe(true);
});
