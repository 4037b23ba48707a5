import fc from 'fast-check';
import { writeSheet } from '../../shared/sheet/write.ts';
import { bushJob } from '../document/sample.ts';
import { mutated, nasty } from './inputs.ts';

const KEYS = [
  '__proto__',
  'constructor',
  'prototype',
  'polluted',
  'id',
  'role',
  'name',
  'label',
  'entry',
  'limits',
  'lower',
  'measured',
  'inputs',
  'outputs',
  'close_in',
  'dismissed',
  'note',
  'kind',
  'edition',
  'hasOwnProperty',
  'toString',
  '',
  'a.b',
  '#order',
  'extra',
  'needs',
  'version',
];

/** Ids and names that are shaped like something the program means by itself. */
const SHAPES = [
  ...[
    'a@.greatest',
    'a@',
    '@',
    'a/in/x',
    'a/out/x',
    '/',
    'a~b',
    '~',
    '!',
    'a!b',
    '%',
    '%2e',
    '%zz',
    '.',
    '..',
    '.a',
    'a.value',
  ],
  ...[
    'constructor',
    '__proto__',
    'toString',
    'valueOf',
    'hasOwnProperty',
    'math',
    'msup',
    '#gone',
    '#order',
    '{c1}',
    '\u0000',
    ' ',
  ],
];
/** Formulas that are all one sign: a document reads the names in every entry it takes in. */
const hollow = fc
  .tuple(fc.constantFrom('<', '(', '-', 'bore+', '{', '"'), fc.integer({ min: 1, max: 3500 }))
  .map(([sign, n]) => `=${sign.repeat(n)}`);

const text = fc.oneof(
  { weight: 8, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
  { weight: 8, arbitrary: nasty },
  { weight: 8, arbitrary: fc.constantFrom(...KEYS) },
  { weight: 6, arbitrary: fc.constantFrom(...SHAPES) },
  { weight: 1, arbitrary: hollow },
);
/** Every place of a JSON value, as the way to it. */
const placesIn = (
  value: unknown,
  way: ReadonlyArray<string | number> = [],
): Array<ReadonlyArray<string | number>> =>
  typeof value !== 'object' || value === null
    ? [way]
    : [way, ...Object.entries(value).flatMap(([at, inner]) => placesIn(inner, [...way, at]))];

type Node = Record<string | number, unknown>;

/** A sheet in which whole parts were changed for others: another type, another part of itself, an id with a meaning of its own. */
const restructured = fc
  .array(fc.tuple(fc.nat(), fc.constantFrom('put', 'cut', 'twice', 'swap', 'shape'), fc.nat(), fc.nat()), {
    minLength: 1,
    maxLength: 6,
  })
  .map((changes) => {
    const sheet = JSON.parse(writeSheet(bushJob())) as Node;
    const odd: unknown[] = [
      null,
      0,
      -1,
      true,
      [],
      {},
      [{}],
      '',
      { toString: 1 },
      { a: { b: 'c' } },
      ['x'],
      1e308,
    ];
    for (const [place, how, other, k] of changes) {
      const ways = placesIn(sheet).filter((way) => way.length > 0);
      const way = ways[place % ways.length]!;
      const at = way.at(-1)!;
      const parent = way.slice(0, -1).reduce<Node>((node, step) => node[step] as Node, sheet);
      const elsewhere = ways[other % ways.length]!;
      const found = structuredClone(elsewhere.reduce<unknown>((node, step) => (node as Node)[step], sheet));
      if (how === 'put') parent[at] = structuredClone(odd[k % odd.length]);
      else if (how === 'cut') delete parent[at];
      else if (how === 'twice') parent[`${at}2`] = found;
      else if (how === 'swap') parent[at] = found;
      else
        parent[['id', 'name', 'entry', 'kind', 'gauge', String(at)][other % 6]!] = SHAPES[k % SHAPES.length];
    }
    return JSON.stringify(sheet);
  });

const key = fc.oneof(fc.constantFrom(...KEYS), fc.string({ maxLength: 6 }));

const json = fc.letrec<{ value: unknown; record: unknown }>((tie) => ({
  value: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    text,
    fc.double(),
    fc.boolean(),
    fc.constant(null),
    fc.array(tie('value'), { maxLength: 4 }),
    tie('record'),
  ),
  // Built as text, so that __proto__ is a key like any other.
  record: fc
    .array(fc.tuple(key, tie('value')), { maxLength: 5 })
    .map((entries) =>
      JSON.parse(`{${entries.map(([k, v]) => `${JSON.stringify(k)}:${write(v)}`).join(',')}}`),
    ),
}));

const write = (value: unknown): string => JSON.stringify(value) ?? 'null';

const cell = fc
  .tuple(
    fc.record({
      id: fc.oneof(fc.constantFrom('c1', 'c2', 'c3'), fc.constantFrom(...SHAPES), text),
      role: fc.oneof(
        fc.constantFrom('given', 'measured', 'chosen', 'worked', 'cell', 'section', 'remark'),
        text,
      ),
    }),
    fc.array(fc.tuple(fc.oneof(key, fc.constant('entry')), fc.oneof(text, json.value)), { maxLength: 6 }),
  )
  .map(
    ([head, entries]) =>
      `{"id":${write(head.id)},"role":${write(head.role)}${entries.map(([k, v]) => `,${write(k)}:${write(v)}`).join('')}}`,
  );

/** Sheets that are nearly right: every field of the head, cells with anything in them. */
const nearSheet = fc
  .tuple(fc.array(cell, { maxLength: 5 }), text, json.value, fc.boolean())
  .map(
    ([cells, title, extra, odd]) =>
      `{"format":"fitwright-sheet","version":1,"title":{"title":${write(title)},"__proto__":{"polluted":true}},` +
      `"units":{"length":"in"},"rule":"simple","cells":[${cells.join(',')}],"extra":${write(extra)}${odd ? `,"variants":${write(extra)}` : ''}}`,
  );

const deep = fc
  .tuple(fc.constantFrom('[', '{"a":', '{"cells":['), fc.integer({ min: 1, max: 5000 }))
  .map(([open, depth]) => open.repeat(depth));

/** A sheet of up to 100 kB: the lines of the job over and over, changed in a few places. */
const large = mutated(
  fc.integer({ min: 2, max: 40 }).map((times) => {
    const job = bushJob();
    const cells = Array.from({ length: times }, (_, k) =>
      job.cells.map((cell) => ({
        ...cell,
        id: `${cell.id}_${k}`,
        ...(cell.name && { name: `${cell.name}_${k}` }),
      })),
    ).flat();
    return writeSheet({ ...job, cells }).slice(0, 100_000);
  }),
);

/** Texts that come as a sheet's file. */
export const sheetTexts: fc.Arbitrary<string> = fc.oneof(
  { weight: 4, arbitrary: mutated(fc.constant(writeSheet(bushJob()))) },
  { weight: 4, arbitrary: restructured },
  { weight: 4, arbitrary: nearSheet },
  { weight: 2, arbitrary: mutated(nearSheet) },
  { weight: 1, arbitrary: json.value.map(write) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary' }) },
  { weight: 1, arbitrary: deep },
  { weight: 1, arbitrary: large },
);
