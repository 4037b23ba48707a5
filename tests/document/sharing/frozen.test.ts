import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fingerprintOfEdition1 as fingerprint } from '../../../shared/sheet/fingerprint.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import { readCode } from '../../../src/document/sharing/code.ts';
import { SheetDocument } from '../../../src/document/sheet-document.ts';
import { printer } from '../prints.ts';

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

/** Every template, the filled job and ten jobs, as the last program of version 1 wrote them. */
const first = new URL('version-1/', folder);
const prints = JSON.parse(readFileSync(new URL('fingerprints.json', first), 'utf8')) as Record<
  string,
  string
>;

describe('what was written as version 1', () => {
  it('is all there', () => {
    expect(Object.keys(prints).filter((name) => name.startsWith('template-'))).toHaveLength(18);
    expect(Object.keys(prints).filter((name) => name.startsWith('job-'))).toHaveLength(10);
    expect(Object.keys(prints)).toContain('filled-saw-arbor-bush');
  });

  it.each(Object.keys(prints))(
    '%s is read without a loss, and known by the fingerprint it had',
    async (name) => {
      const text = readFileSync(new URL(`${name}.json`, first), 'utf8');
      const read = readSheet(text);
      if (!('file' in read)) throw new Error(read.message);
      expect(read.unknown).toEqual([]);
      expect(read.file).toEqual({ ...JSON.parse(text), version: 2 });
      expect(fingerprint(read.file)).toBe(prints[name]);
      expect(await printer.isOf(prints[name]!, read.file)).toBe(true);
      // Kept and written by the present edition it is the same sheet, of the present version.
      const again = readSheet(writeSheet(SheetDocument.fromFile(read.file).toFile()));
      expect(again).toMatchObject({ file: read.file });
    },
  );
});

it('there is one of the present version at least', () => {
  expect(names.some((name) => name.startsWith('version-1'))).toBe(true);
});
