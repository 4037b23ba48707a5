import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ReadSheet, readSheet } from '../../../shared/sheet/read.ts';
import { faultsOf, isObject, type Schema } from '../../../shared/sheet/schema.ts';
import schemaText from '../../../shared/sheet/sheet.schema.json' with { type: 'json' };
import { sheetSchema } from '../../../shared/sheet/sheet-schema.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import { sample } from './sample.ts';

const ajvSays = new Ajv2020({ strict: true }).compile(schemaText);

const read = (value: unknown) => readSheet(typeof value === 'string' ? value : JSON.stringify(value));
const opened = (value: unknown): ReadSheet => {
  const found = read(value);
  if (!('file' in found)) throw new Error(found.message);
  return found;
};
const refusal = (value: unknown): string => {
  const found = read(value);
  if ('file' in found) throw new Error('was read');
  return found.message;
};
const withCells = (...cells: object[]) => ({ ...sample(), cells });

/** Every path of a JSON value. */
const paths = (value: unknown, here: Array<string | number> = []): Array<Array<string | number>> => [
  here,
  ...(Array.isArray(value)
    ? value.flatMap((item, i) => paths(item, [...here, i]))
    : isObject(value)
      ? Object.entries(value).flatMap(([key, item]) => paths(item, [...here, key]))
      : []),
];
const replaced = (value: unknown, path: ReadonlyArray<string | number>, by: unknown): unknown => {
  const [head, ...rest] = path;
  if (head === undefined) return by;
  const copy = structuredClone(value) as Record<string | number, unknown>;
  const next = replaced(copy[head], rest, by);
  if (next === undefined) delete copy[head];
  else copy[head] = next;
  return copy;
};

describe('the schema', () => {
  test('knows every field of the full sample, and the sample uses every field it knows', () => {
    expect(ajvSays(sample()), JSON.stringify(ajvSays.errors)).toBe(true);
    const unused: string[] = [];
    const visit = (value: unknown[], reference: Schema, path: string): void => {
      const s = reference.$ref
        ? (sheetSchema().$defs[reference.$ref.replace('#/$defs/', '')] as Schema)
        : reference;
      for (const [key, below] of Object.entries(s.properties ?? {})) {
        const values = value
          .filter(isObject)
          .filter((v) => key in v)
          .map((v) => v[key]);
        if (values.length === 0) unused.push(`${path}.${key}`);
        else visit(values, below, `${path}.${key}`);
      }
      for (const v of value.filter(isObject))
        for (const key of Object.keys(v))
          if (s.properties && !(key in s.properties)) unused.push(`unknown ${path}.${key}`);
      if (s.items) visit(value.filter(Array.isArray).flat(), s.items, `${path}[]`);
      if (s.additionalProperties)
        visit(
          value.filter(isObject).flatMap((v) => Object.values(v)),
          s.additionalProperties,
          `${path}.*`,
        );
    };
    visit([sample()], sheetSchema(), 'sheet');
    // Limits and measured of an output are the same definitions as those of a cell, used in full there.
    expect(unused.filter((path) => !path.includes('outputs.*'))).toEqual([]);
  });

  test('describes everything it defines', () => {
    const bare: string[] = [];
    const visit = (value: unknown, path: string): void => {
      if (!isObject(value)) return;
      for (const [key, s] of Object.entries(
        (value.properties ?? {}) as Record<string, Record<string, unknown>>,
      )) {
        if (!s.description && !s.$ref) bare.push(`${path}.${key}`);
        visit(s, `${path}.${key}`);
      }
      visit(value.items, `${path}[]`);
    };
    visit(schemaText, 'sheet');
    for (const [name, s] of Object.entries(schemaText.$defs)) visit(s, name);
    expect(bare).toEqual([]);
  });

  test('and the reader agree with a general validator, whatever is put in place of any part', () => {
    const all = paths(sample());
    const oddities = fc.oneof(
      fc.constantFrom(
        undefined,
        null,
        '',
        'in',
        'mm',
        'simple',
        'cell',
        0,
        1,
        1.5,
        -1,
        true,
        [],
        {},
        [''],
        [{}],
        { a: 1 },
        { entry: 1 },
      ),
      fc.jsonValue({ maxDepth: 2 }),
    );
    let refused = 0;
    fc.assert(
      fc.property(fc.constantFrom(...all), oddities, (path, by) => {
        const changed = replaced(sample(), path, by);
        const valid = ajvSays(changed);
        if (!valid) refused += 1;
        expect(faultsOf(changed, sheetSchema()).length === 0).toBe(valid);
      }),
      { seed: 6, numRuns: 3000 },
    );
    expect(refused).toBeGreaterThan(500);
  });
});

describe('a sheet file', () => {
  test('comes back as it was written, unknown fields too', () => {
    const odd = {
      ...sample(),
      shop: { shelf: 3 },
      cells: sample().cells.map((c) => ({ ...c, colour: ['x', null] })),
    };
    expect(opened(writeSheet(odd))).toMatchObject({
      file: odd,
      unknown: { 0: 'shop', 1: 'cells[0].colour' },
    });
    expect(opened(`\ufeff${writeSheet(odd)}`).file).toEqual(odd);
  });

  test('is written the same whatever the order of its fields in memory', () => {
    const turned = (value: unknown): unknown =>
      Array.isArray(value)
        ? value.map(turned)
        : isObject(value)
          ? Object.fromEntries(
              Object.entries(value)
                .reverse()
                .map(([k, v]) => [k, turned(v)]),
            )
          : value;
    expect(writeSheet(turned(sample()) as ReturnType<typeof sample>)).toBe(writeSheet(sample()));
    expect(writeSheet(sample())).toMatch(/^{\n {2}"format": "fitwright-sheet",\n {2}"version": 2,/);
  });
});

describe('what cannot be read', () => {
  test.each([
    ['', 'empty'],
    ['{"format": "fitwright-sheet",\n  "version" 1}', 'line 2, column 13'],
    ['[]', 'no fields'],
    ['{}', '"format" is missing'],
    ['{"format": "other"}', 'is "other"; it must be "fitwright-sheet"'],
    ['{"format": "fitwright-sheet", "version": 3}', 'newer edition'],
    ['{"format": "fitwright-sheet", "version": 0}', 'version is 0; it must be 2'],
    ['PK\u0003\u0004', 'not JSON'],
    ['['.repeat(100_000), 'nests 100000 levels deep'],
    [`"${'x'.repeat(20_000_001)}"`, '20.0 MB'],
  ])('case %#', (text, words) => expect(refusal(text)).toContain(words));

  test('says which field is wrong, what it holds and what it should hold', () => {
    expect(refusal(withCells({ id: 'a', role: 'guess' }))).toContain(
      'cells[0].role is "guess"; it must be one of given, measured',
    );
    expect(refusal(withCells({ id: 'a', role: 'given', entry: 2.25 }))).toContain(
      'cells[0].entry is a number; it must be text',
    );
    expect(refusal({ ...sample(), title: {} })).toContain('title.title is missing');
    expect(
      refusal({
        ...sample(),
        cells: Array.from({ length: 10_001 }, (_, i) => ({ id: `${i}`, role: 'remark' })),
      }),
    ).toContain('cells has 10001 items; at most 10000');
  });

  test('10,000 cells are read', () => {
    const cells = Array.from({ length: 10_000 }, (_, i) => ({ id: `${i}`, role: 'remark', note: 'x' }));
    expect(opened(withCells(...cells)).file.cells).toHaveLength(10_000);
  });
});

describe('what is read with a warning', () => {
  const given = (id: string, name: string) => ({ id, role: 'given', name });

  test('doubled ids get new ones, doubled names stay', () => {
    const found = opened(withCells(given('a', 'bore'), given('a', 'bush'), given('a-2', 'bore')));
    expect(found.file.cells.map((c) => c.id)).toEqual(['a', 'a-3', 'a-2']);
    expect(found.file.cells.map((c) => c.name)).toEqual(['bore', 'bush', 'bore']);
    expect(found.warnings).toEqual([
      expect.stringContaining('Cell 2 had the same id'),
      expect.stringContaining('both named "bore"'),
    ]);
  });

  // Unicode Technical Standard 39, confusables.txt: Armenian oh, Latin l and capital I, digit one.
  test.each([
    ['bore', 'b\u0585re', ''],
    ['d1', 'dl', ''],
    ['d1', 'dI', ''],
    // Letters that nobody sees: fillers of Hangul and Khmer, a joiner of marks.
    ['bore', 'bore\u3164', ''],
    ['bore', 'bo\u115fre', ''],
    ['bore', 'bore\u17b4', ''],
    ['bore', 'bo\u034fre', ''],
    ['\u03c1', 'p', 'stay apart: formulas use both'],
  ])('%s beside %s', (one, other, apart) => {
    const { warnings } = opened(withCells(given('a', one), given('b', other)));
    expect(warnings.some((text) => text.includes('look alike'))).toBe(!apart);
  });

  test('names that look alike, and letters of two scripts in one name', () => {
    const found = opened(withCells(given('a', 'bore'), given('b', 'b\u043ere')));
    expect(found.warnings).toEqual([
      expect.stringContaining('look alike'),
      expect.stringContaining('mixes Latin letters'),
    ]);
    expect(
      opened(withCells(given('a', '\u03bd_bronze'), given('b', 'длина'), given('c', 'Außendurchmesser')))
        .warnings,
    ).toEqual([]);
  });

  test('fields that this edition does not know: kept, named, and told apart from those that no verdict goes by', () => {
    const found = opened({
      ...withCells({
        ...given('a', 'bore'),
        manner: 'by comparison',
        limits: { lower: '1 in', probable: '2 in' },
      }),
      title: { title: 'Bush', shelf: '3' },
    });
    expect(found.file.cells[0]).toMatchObject({ manner: 'by comparison' });
    expect(found.unknown).toEqual(['cells[0].manner', 'cells[0].limits.probable']);
    expect(found.warnings).toEqual([
      expect.stringMatching(/title\.shelf, cells\[0\]\.manner, cells\[0\]\.limits\.probable/),
    ]);
    const inside = opened({
      ...withCells({ ...given('a', 'bore'), dismissed: [{ slip: 'turn', text: '1 in', by: 'E. Quill' }] }),
      variants: [{ name: 'heavier', entries: { bore: '2 in' }, holds: true }],
      tables: [{ table: 't', key: 'k', column: 'c', value: 1, low: 1, high: 1, unit: 'psi' }],
      from: { title: 'Bush', fingerprint: 'ab', edition: 2 },
    });
    expect(inside.unknown.toSorted()).toEqual([
      'cells[0].dismissed[0].by',
      'from.edition',
      'tables[0].unit',
      'variants[0].holds',
    ]);
    expect(inside.warnings.join(' ')).toContain(
      'from.edition, variants[0].holds, tables[0].unit, cells[0].dismissed[0].by.',
    );
    const often = opened(
      withCells({ ...given('a', 'bore'), torque: 1 }, { ...given('b', 'pin'), torque: 2 }),
    );
    expect(often.warnings.join(' ')).toContain('cells[0].torque (and in 1 more place)');
    // Left out for its name, it leaves as much open as one that is kept.
    const left = '{"id":"a","role":"given","__proto__":{"role":"measured"}}';
    expect(
      opened(JSON.stringify(withCells(given('a', 'bore'))).replace(/"cells":\[.*?\]/, `"cells":[${left}]`))
        .unknown,
    ).toEqual(['cells[0].__proto__']);
  });

  test('not at all where the sheet says that it needs what this edition does not know', () => {
    expect(refusal({ ...sample(), needs: ['readings by comparison'] })).toContain('"readings by comparison"');
    expect(refusal({ ...sample(), needs: [{}] })).toContain('newer edition');
    expect(opened({ ...sample(), needs: [] }).warnings).toEqual(opened(sample()).warnings);
  });

  test('characters nobody sees, wherever they stand', () => {
    const found = opened({
      ...withCells({ ...given('a', 'bore'), entry: '2.25\u202e in' }),
      extra: ['\u200b'],
    });
    expect(found.warnings).toEqual([
      expect.stringContaining('cells[0].entry, extra[0]'),
      expect.stringContaining('does not know'),
    ]);
  });

  test('half a character becomes the replacement character', () => {
    const found = opened(withCells({ ...given('a', 'bore'), note: 'worn \ud83d' }));
    expect(found.file.cells[0]?.note).toBe('worn \ufffd');
    expect(found.warnings).toHaveLength(1);
  });

  test('fields that reach into every object are left out', () => {
    const text = JSON.stringify(withCells(given('a', 'bore'))).replace(
      '"id"',
      '"__proto__":{"locked":true},"constructor":{},"id"',
    );
    const found = opened(text);
    expect(found.file.cells[0]).toEqual(given('a', 'bore'));
    expect(found.file.cells[0]?.locked).toBeUndefined();
    expect(({} as { locked?: boolean }).locked).toBeUndefined();
    expect(found.warnings).toEqual([expect.stringContaining('cells[0].__proto__, cells[0].constructor')]);
  });
});

test.each([
  ['title.extra', { title: { title: 'Bush', extra: { a: 1 } } }],
  ['title.title', { title: { title: { toString: 'x' } } }],
  ['title.tags', { title: { title: 'Bush', tags: [{ a: 1 }] } }],
  ['cells[0].label', { cells: [{ id: 'a', role: 'given', label: ['x'] }] }],
  ['cells[0].entry', { cells: [{ id: 'a', role: 'given', entry: { valueOf: 1 } }] }],
  ['cells[0].id', { cells: [{ id: { a: 1 }, role: 'given' }] }],
])(
  'an object where text belongs, %s, is refused or kept as what nobody knows, and nothing throws',
  (at, fields) => {
    const found = readSheet(JSON.stringify({ ...sample(), ...fields }));
    const said = 'message' in found ? found.message : found.warnings.join(' ');
    expect(said).toContain(at.replace(/\[0\]/, '').split('.').at(-1));
  },
);

test('whatever the text, reading answers and never throws', () => {
  const whole = writeSheet(sample());
  fc.assert(
    fc.property(fc.nat(whole.length), fc.nat(whole.length), fc.string({ maxLength: 20 }), (a, b, text) => {
      const found = readSheet(whole.slice(0, Math.min(a, b)) + text + whole.slice(Math.max(a, b)));
      expect('file' in found || found.message.length > 10).toBe(true);
    }),
    { seed: 7, numRuns: 1000 },
  );
});
