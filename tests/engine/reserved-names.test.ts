import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { toMathML } from '../../src/language/display/mathml.ts';
import { parseFormula } from '../../src/language/parse.ts';
import { inch } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

/** Names that every object has of itself. */
const RESERVED = [
  'constructor',
  '__proto__',
  'toString',
  'valueOf',
  'hasOwnProperty',
  'prototype',
  'length',
  'then',
];

describe.each(RESERVED)('%s', (name) => {
  it('is a name like any other, of a line and in a formula', () => {
    const document = SheetDocument.fromFile(
      sheetOf([
        { id: 'a', name, role: 'given', quantity: 'length', entry: '2 in ± 0.001 in' },
        { id: 'b', name: 'twice', role: 'worked', entry: `=2 * ${name}` },
      ]),
    );
    const read = readSheet(writeSheet(document.toFile()));
    if (!('file' in read)) throw new Error(read.message);
    const sheet = computeSheet(read.file, library);
    expect(sheet.byName('twice')?.outputs.value?.planned?.value).toBeCloseTo(4 * inch, 12);
    document.renameCell('a', 'bore');
    expect(document.cell('b')?.entry).toBe('=2 * bore');
  });

  it('named where nothing bears it is asked for in words, with or without an output or arguments', () => {
    const entries = [`=${name}`, `=${name} + 1 in`, `=${name}.${name}`, `=${name}(1 in)`, `=a.${name}`, name];
    const cells = entries.map((entry, k) => ({ id: `c${k}`, name: `l${k}`, role: 'worked' as const, entry }));
    const sheet = computeSheet(
      sheetOf([{ id: 'a', name: 'a', role: 'given', entry: '1 in' }, ...cells]),
      library,
    );
    for (const [k, entry] of entries.entries()) {
      const found = sheet.byName(`l${k}`)!;
      expect(found.outputs.value?.planned, entry).toBeUndefined();
      const said = [...found.problems, found.outputs.value?.problem].flatMap((p) => p?.message ?? []);
      expect(said.length, entry).toBeGreaterThan(0);
      for (const words of said) expect(words).not.toMatch(/\[object|undefined|NaN|native code/);
    }
    const { expr } = parseFormula(`=${name} + 1 in`);
    if (expr) expect(toMathML(expr)).toContain(name.replaceAll('_', '')[0]);
  });
});
