import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonical } from '../../../shared/sheet/canonical.ts';
import {
  fingerprint as fingerprintOf,
  fingerprintOfEdition1,
  isOfEdition1,
  shortFingerprint,
} from '../../../shared/sheet/fingerprint.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { sha256 } from '../../../shared/sheet/sha256.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import { sample } from './sample.ts';

test('SHA-256 agrees with the platform’s, for texts of every length about a block and of any letters', () => {
  const theirs = (text: string) => createHash('sha256').update(text).digest('hex');
  for (let n = 0; n <= 200; n += 1) expect(sha256('a'.repeat(n))).toBe(theirs('a'.repeat(n)));
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
      expect(sha256(text)).toBe(theirs(text));
    }),
    { seed: 8 },
  );
  expect(sha256('é€😀'.repeat(40_000))).toBe(theirs('é€😀'.repeat(40_000)));
});

describe('the canonical form', () => {
  test('of any JSON value reads back as the value, in one spelling', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const text = canonical(JSON.parse(JSON.stringify(value)));
        expect(canonical(JSON.parse(text))).toBe(text);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
      }),
      { seed: 9 },
    );
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, '\ud800', () => 1, 1n])('has no place for %s', (value) =>
    expect(() => canonical([value])).toThrow(TypeError),
  );
});

/** Of a sheet whose numbers have their units. */
const fingerprint = (file: SheetFile): string => fingerprintOf({ file, bare: false });

describe('the fingerprint', () => {
  const changed = (change: (file: SheetFile) => void): string => {
    const file = sample();
    change(file);
    return fingerprint(file);
  };
  const original = fingerprint(sample());

  test('survives writing and reading', () => {
    const found = readSheet(writeSheet(sample()));
    expect('file' in found && fingerprint(found.file)).toBe(original);
    expect(original).toMatch(/^2:[0-9a-f]{64}$/);
  });

  test('stays when only units of display change, or a field that says nothing comes or goes', () => {
    expect(
      changed((f) => {
        f.units.length = 'mm';
      }),
    ).toBe(original);
    expect(
      changed((f) => {
        delete f.units.temperature;
        delete f.units.both;
      }),
    ).toBe(original);
    expect(
      changed((f) => {
        f.cells[1]!.display = 'um';
      }),
    ).toBe(original);
    expect(
      changed((f) => {
        delete f.cells[3]!.outputs!.close_in!.display;
      }),
    ).toBe(original);
    expect(
      changed((f) => {
        delete f.template;
        f.cells[0]!.note = '';
        f.cells[0]!.limits = {};
      }),
    ).toBe(original);
  });

  test('can be taken of any text', () => {
    expect(
      changed((f) => {
        f.cells[0]!.note = '\ud800';
      }),
    ).toMatch(/^2:[0-9a-f]{64}$/);
  });

  test('is compared by eye in twenty characters of which no two look alike', () => {
    const short = shortFingerprint(original);
    expect(short).toMatch(/^[2-9A-HJ-NP-Z]{4}( [2-9A-HJ-NP-Z]{4}){4}$/);
    // All zeros and all ones, by hand: five bits a character, the highest first.
    expect(shortFingerprint(`2:${'0'.repeat(64)}`)).toBe('2222 2222 2222 2222 2222');
    expect(shortFingerprint(`2:${'f'.repeat(64)}`)).toBe('ZZZZ ZZZZ ZZZZ ZZZZ ZZZZ');
    expect(shortFingerprint(`2:08${'0'.repeat(62)}`)).toBe('3222 2222 2222 2222 2222');
    expect(new Set(['2:1', '2:2'].map((start) => shortFingerprint(start.padEnd(66, '0')))).size).toBe(2);
  });

  test('of edition 1 is still taken, of files of any version, and shown as paper has it', () => {
    const old = fingerprintOfEdition1(sample());
    expect(old).toMatch(/^[0-9a-f]{64}$/);
    expect(fingerprintOfEdition1({ ...sample(), version: 2 as never })).toBe(old);
    expect(shortFingerprint(old)).toBe(old.slice(0, 8));
    expect([old, original].map(isOfEdition1)).toEqual([true, false]);
  });

  test('tells sheets apart whose bare numbers count in other units', () => {
    const [inch, mm] = (['in', 'mm'] as const).map((length) =>
      fingerprintOf({ file: { ...sample(), units: { length } }, bare: true }),
    );
    expect(inch).not.toBe(mm);
  });

  test('changes with an entry, an example, a limit, an order, a unit that gives a meaning, an unknown field', () => {
    const others = [
      changed((f) => {
        f.cells[1]!.entry = '1.7485 in';
      }),
      changed((f) => {
        f.cells[1]!.example = '1.7486 in';
      }),
      changed((f) => {
        f.cells[1]!.limits!.wear = '1.7451 in';
      }),
      changed((f) => {
        f.cells.reverse();
      }),
      changed((f) => {
        f.units.ton = 'long_ton';
      }),
      changed((f) => {
        Object.assign(f, { shop: 1 });
      }),
    ];
    expect(new Set([...others, original]).size).toBe(others.length + 1);
  });
});
