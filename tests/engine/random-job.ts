import fc from 'fast-check';
import type { CellRecord, Limits, SheetFile } from '../../shared/sheet/format.ts';
import type { SheetChange, SheetSettings } from '../../src/engine/rows/change.ts';
import { sheetOf } from './random-sheet.ts';

/**
 * Random job sheets of every kind of cell, right and wrong texts mixed, and edits of them. Names come from a short
 * list, so that cells depend on each other, share names, lose what they depend on and stand in rings. Every literal has its
 * unit, so that a change of the sheet's units can change no value.
 */
const NAMES = [
  'bore',
  'bush',
  'journal',
  'gap',
  'x',
  'größe',
  'mic',
  'ring',
  'iron',
  'press',
  'run',
  'close_in',
];
const name = fc.constantFrom(...NAMES);
const inches = fc.integer({ min: 15_000, max: 24_000 }).map((n) => `${(n / 10_000).toFixed(4)} in`);
const spread = fc.constantFrom(
  '',
  ' ± .0002 in',
  ' ± .0002 in (k=2)',
  ' ± .0002 in (k=3)',
  ' +.0005 in -.0001 in',
  ' ± 0.1 %',
);
const sized = fc.tuple(inches, spread).map(([size, tail]) => size + tail);
const figure = fc.constantFrom(
  '',
  '',
  '.least',
  '.greatest',
  '.taper',
  '.close_in',
  '.interference',
  '.alpha',
);
const length = fc.constantFrom(
  'bore',
  'bush',
  'journal',
  'gap',
  'x',
  'größe',
  'press.close_in',
  'press.interference',
  'run.clearance',
  'bore.least',
  'journal.greatest',
);
const formula = fc.oneof(
  fc.tuple(length, fc.constantFrom('+', '-'), length).map(([a, op, b]) => `=${a} ${op} ${b}`),
  fc.tuple(length, length).map(([a, b]) => `=${a} * ${b} / 2 in`),
  fc.tuple(length, length).map(([a, b]) => `=MAX(${a}; ${b}) - ABS(${a} - ${b}) / 3`),
  fc.tuple(length, length).map(([a, b]) => `=IF(${a} > ${b}; ${a}; ${b}) ± .0001 in`),
  length.map((a) => `=${a} * ${a} / (${a} + 3 in)`),
  fc.tuple(name, figure).map(([a, b]) => `=${a}${b} + .001 in`),
  fc.constantFrom('=1/0', '=(bore', '=nothing + bore', '=bore + 20 degC', '=bore * 1e300 * 1e300'),
);
const readings = fc.oneof(
  sized,
  fc.tuple(inches, inches).map(([a, b]) => `${a}; ${b}`),
  inches.map((a) => `${a}; ${a} | ${a} ± .0002 in`),
  fc.constantFrom('', 'garbage', '0.0000 in'),
);
const entries: Record<string, fc.Arbitrary<string>> = {
  given: fc.oneof(sized, fc.constantFrom('', 'oops', '50 mm H7', '1.5 in..1.6 in')),
  measured: readings,
  chosen: fc.oneof(inches, formula),
  worked: formula,
};
const limits: fc.Arbitrary<Limits> = fc.record(
  {
    lower: fc.oneof(inches, fc.constantFrom('.001 in', '=bore - .01 in ± .002 in', '=x', '=1/0', '')),
    upper: fc.oneof(inches, fc.constantFrom('.004 in', '=gap + .002 in', '3 in')),
    wear: fc.constantFrom('.008 in', '3 in', '=bore'),
    metalOn: fc.constantFrom('low' as const, 'high' as const),
    rule: fc.constantFrom('worst-case' as const, 'iso14253-2013' as const, 'iso14253-2017' as const),
  },
  { requiredKeys: [] },
);
const gauge = fc.constantFrom('mic', 'ring', 'nothing');
const measured = fc.record({ entry: readings, gauge }, { requiredKeys: ['entry'] });
const tolerance = fc.constantFrom('+.0005 in -0 in', '± .001 in', 'H7', 'snug', '± 1 %');

type Body = Omit<CellRecord, 'id' | 'name'>;

const plain: fc.Arbitrary<Body> = fc.constantFrom('given', 'measured', 'chosen', 'worked').chain((role) =>
  fc.record(
    {
      role: fc.constant(role as CellRecord['role']),
      entry: entries[role] as fc.Arbitrary<string>,
      quantity: fc.constant('length'),
      limits,
      tolerance,
      gauge,
      at: fc.constantFrom('24 degC ± 1 K', 'warm'),
      material: fc.constantFrom('iron', 'x'),
      measured,
      issued: fc.oneof(sized, fc.constant('=bore')),
    },
    { requiredKeys: ['role', 'entry'] },
  ),
);
const size = fc.oneof(
  length.map((of) => `=${of}`),
  name,
  sized,
  formula,
  fc.constant(''),
);
const inputs: Record<string, fc.Arbitrary<Record<string, string>>> = {
  material: fc.record({ material: fc.constantFrom('gray-iron-30', 'c93200', 'not-one') }),
  gauge: fc.record(
    {
      gauge: fc.constantFrom('micrometer-2-3-in', 'micrometer-1-2-in', 'not-one'),
      set_in: fc.constantFrom('mic', 'ring'),
      certificate: fc.constantFrom('.0001 in', '-1 um'),
    },
    { requiredKeys: ['gauge'] },
  ),
  'bush-close-in': fc.record({
    bush_outside: size,
    bush_bore: fc.constant('1.4 in'),
    interference: fc.oneof(size, fc.constant('=gap')),
    housing_outside: fc.constant('4 in'),
    bush_material: fc.constantFrom('iron', 'x'),
    housing_material: fc.constant('iron'),
  }),
  'running-clearance': fc.record({
    bore: size,
    journal: size,
    new_least: fc.constantFrom('', '.001 in'),
    new_greatest: fc.constantFrom('', '.004 in', '=gap'),
    wear_limit: fc.constantFrom('', '.008 in'),
  }),
};
const OUTPUT: Record<string, string> = {
  material: 'alpha',
  gauge: 'error',
  'bush-close-in': 'close_in',
  'running-clearance': 'clearance',
};
const library: fc.Arbitrary<Body> = fc.constantFrom(...Object.keys(inputs)).chain((kind) =>
  fc
    .record({
      inputs: inputs[kind] as fc.Arbitrary<Record<string, string>>,
      settings: fc.option(fc.record({ measured, limits }, { requiredKeys: [] }), { nil: undefined }),
    })
    .map(({ inputs: given, settings }) => ({
      role: 'cell' as const,
      kind,
      inputs: given,
      ...(settings && kind !== 'material' ? { outputs: { [OUTPUT[kind] as string]: settings } } : {}),
    })),
);
const aside: fc.Arbitrary<Body> = fc.constantFrom('section', 'remark').map((role) => ({
  role: role as CellRecord['role'],
  label: role,
}));
const body = fc.oneof({ weight: 5, arbitrary: plain }, { weight: 3, arbitrary: library }, aside);

/** Ids begin with any letter, so that of two cells of one name now the older, now the younger counts. */
const cell = fc
  .tuple(fc.constantFrom(...'abcdef'), fc.nat(999), name, body)
  .map(([letter, n, called, rest]): CellRecord => ({ id: `${letter}${n}`, name: called, ...rest }));

const settings: fc.Arbitrary<SheetSettings> = fc.record({
  units: fc.record({ length: fc.constantFrom('in' as const, 'mm' as const) }),
  rule: fc.constantFrom('worst-case' as const, 'iso14253-2013' as const, 'iso14253-2017' as const),
});

export interface Job {
  cells: CellRecord[];
  settings: SheetSettings;
}

const named = (called: string, of: fc.Arbitrary<Body>, index: number) =>
  of.map((rest): CellRecord => ({ id: `c${1000 + index}`, name: called, ...rest }));

export const job: fc.Arbitrary<Job> = fc.record({
  cells: fc.tuple(
    ...NAMES.map((called, i) =>
      named(
        called,
        ['mic', 'ring', 'iron', 'press', 'run'].includes(called) ? fc.oneof(library, plain) : plain,
        i,
      ),
    ),
  ),
  settings,
});

export type JobEdit =
  | { kind: 'put'; cell: CellRecord }
  | { kind: 'replace'; at: number; body: Body }
  | { kind: 'remove'; at: number }
  | { kind: 'rename'; at: number; to: string }
  | { kind: 'settings'; settings: SheetSettings }
  | { kind: 'measured'; measured: boolean };

export const jobEdit: fc.Arbitrary<JobEdit> = fc.oneof(
  fc.record({ kind: fc.constant('put' as const), cell }),
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('replace' as const), at: fc.nat(99), body }) },
  fc.record({ kind: fc.constant('remove' as const), at: fc.nat(99) }),
  fc.record({
    kind: fc.constant('rename' as const),
    at: fc.nat(99),
    to: fc.constantFrom('neu', 'other', 'third'),
  }),
  fc.record({ kind: fc.constant('settings' as const), settings }),
  fc.record({ kind: fc.constant('measured' as const), measured: fc.boolean() }),
);

export const fileOf = ({ cells, settings: { units, rule } }: Job): SheetFile => ({
  ...sheetOf(cells),
  units,
  rule,
});

/** Gives a cell another name, and every text that has the old one follows, as the document has it. */
export const renamed = (cells: readonly CellRecord[], id: string, to: string): CellRecord[] => {
  const from = cells.find((one) => one.id === id)?.name as string;
  const word = new RegExp(`(?<![\\p{L}\\p{N}_.-])${from}(?![\\p{L}\\p{N}_-])`, 'gu');
  const asIs = new Set(['id', 'name', 'role', 'kind', 'quantity', 'label']);
  return cells.map((one) => {
    const text = JSON.stringify(one, (key, value) =>
      typeof value === 'string' && !asIs.has(key) ? value.replace(word, to) : value,
    );
    const changed = JSON.parse(text) as CellRecord;
    return one.id === id ? { ...changed, name: to } : changed;
  });
};

/** The sheet after an edit, and what the engine is told of it. */
export const edited = (before: Job, edit: JobEdit): { after: Job; change: SheetChange } => {
  const { cells } = before;
  const at = (index: number) => cells[index % cells.length] as CellRecord;
  const withCells = (now: CellRecord[], change: SheetChange) => ({
    after: { ...before, cells: now },
    change,
  });
  switch (edit.kind) {
    case 'put': {
      const others = cells.filter((one) => one.id !== edit.cell.id);
      return withCells([...others, edit.cell], { changed: [edit.cell] });
    }
    case 'replace': {
      const { id, name: called } = at(edit.at);
      const now: CellRecord = { id, ...(called === undefined ? {} : { name: called }), ...edit.body };
      return withCells(
        cells.map((one) => (one.id === id ? now : one)),
        { changed: [now] },
      );
    }
    case 'remove': {
      const { id } = at(edit.at);
      if (cells.length < 3) return withCells(cells, {});
      return withCells(
        cells.filter((one) => one.id !== id),
        { gone: [id] },
      );
    }
    case 'rename': {
      const now = renamed(cells, at(edit.at).id, edit.to);
      return withCells(now, {
        changed: now.filter((one, i) => JSON.stringify(one) !== JSON.stringify(cells[i])),
      });
    }
    case 'settings':
      return { after: { ...before, settings: edit.settings }, change: { settings: edit.settings } };
    case 'measured':
      return { after: before, change: { measured: edit.measured } };
  }
};
