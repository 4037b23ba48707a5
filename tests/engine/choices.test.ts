import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { Engine } from '../../src/engine/engine.ts';
import { careOf } from '../../src/engine/report/care.ts';
import { settingsOf } from '../../src/engine/rows/whole-sheet.ts';
import { inches, ofKind, plain } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

const IN = 0.0254;
/** ASME B1.1-2003, table 2: major diameter and pitch of 3/8-16 and 1/2-13 UNC. */
const THREADS = { '3/8-16 UNC': [0.375, 1 / 16], '1/2-13 UNC': [0.5, 1 / 13] } as const;

const thread = (name: string, of: string, more: Record<string, string> = {}) =>
  ofKind('thread-limits', name, { thread: of, ...more });
const worked = (cells: CellRecord[]) => inches(cells);
const said = (cells: CellRecord[], name: string) =>
  worked(cells)
    .byName(name)
    ?.problems.map(({ message }) => message)
    .join('\n');

describe('a choice is a value', () => {
  it.each(Object.entries(THREADS))(
    'another line takes the thread %s, through any number of lines',
    (of, [major, pitch]) => {
      const sheet = worked([
        thread('later', 'next.thread'),
        thread('next', '= old.thread'),
        thread('old', of),
        thread('last', '= old'),
      ]);
      for (const name of ['old', 'next', 'later', 'last']) {
        expect(sheet.figure(name, 'major').value).toBeCloseTo(major * IN, 12);
        expect(sheet.figure(name, 'pitch').value).toBeCloseTo(pitch * IN, 12);
      }
      expect(sheet.byName('later')).toMatchObject({ echoes: { 'inputs.thread': of }, feeds: ['c_next'] });
    },
  );

  it('is taken by formulas that take one, and from a plain line that names a thread', () => {
    const sheet = worked([
      plain('tap', 'chosen', '1/2-13 UNC'),
      plain('same', 'chosen', '= tap'),
      thread('next', '= same'),
      plain('drill', 'worked', '= HOLEFORSHARE(next.thread; 0.75)'),
    ]);
    expect(sheet.figure('next', 'major').value).toBeCloseTo(0.5 * IN, 12);
    // ASME B1.1: D - 0.75 * 1.299038 / n
    expect(sheet.figure('drill').value).toBeCloseTo((0.5 - (0.75 * 1.299038) / 13) * IN, 8);
  });

  it('of a class, a material, a grade', () => {
    const sheet = worked([
      ofKind('iso-fit', 'one', { nominal: '50 mm', hole_class: 'H7', shaft_class: 'k6' }),
      ofKind('iso-fit', 'two', {
        nominal: '50 mm',
        hole_class: '= one.hole_class',
        shaft_class: '= one.shaft_class',
      }),
      ofKind('material', 'iron', { material: 'gray-iron-30' }),
      ofKind('material', 'cap', { material: '= iron.material' }),
    ]);
    expect(sheet.byName('two')?.outputs).toEqual(sheet.byName('one')?.outputs);
    expect(sheet.figure('cap', 'E').value).toBe(sheet.figure('iron', 'E').value);
  });

  it('waits for a line in which nothing is chosen, optional inputs too, and says which', () => {
    const cells = [thread('old', ''), thread('next', '= old.thread', { class: '= old.class' })];
    const output = worked(cells).byName('next')?.outputs.major;
    expect(output?.check.asNew.state).toBe('waiting');
    expect(output?.problem).toMatchObject({ kind: 'blank', origin: 'old', originId: 'c_old' });
    expect(said(cells, 'next')).toBe('');
  });

  it.each([
    ['= old.class', /`old.class` is another kind of choice: class. thread wants .* such as = old.thread/],
    ['= old.major', /`old.major` is a figure and no choice/],
    ['= bore', /`bore` is a figure and no choice/],
    ['= nobody.thread', /no cell named `nobody`/],
    ['= old.nothing', /makes no choice `nothing`/],
    ['= old.thread & "x"', /works something out/],
    ['= next.thread', /in a ring/],
  ])('%s is refused with the remedy', (text, message) => {
    const cells = [plain('bore', 'given', '2 in'), thread('old', '3/8-16 UNC'), thread('next', text)];
    expect(said(cells, 'next')).toMatch(message);
    expect(worked(cells).byName('next')?.outputs.major?.planned).toBeUndefined();
  });

  it('is no figure', () => {
    const cells = [
      thread('old', '3/8-16 UNC'),
      plain('size', 'worked', '= old.thread', { limits: { lower: '0 in' } }),
    ];
    expect(said(cells, 'size')).toMatch(/`old.thread` is a choice \(3\/8-16 UNC\) and no figure/);
    expect(said([...cells, plain('more', 'worked', '= 2 * old.thread')], 'more')).toMatch(/needs a number/);
  });

  it('follows an edit, far up the chain, as a sheet built anew does', () => {
    const cells = [
      plain('tap', 'chosen', '3/8-16 UNC'),
      thread('old', '= tap'),
      thread('next', '= old.thread'),
      plain('major', 'worked', '= next.major'),
    ];
    const file = sheetOf(cells);
    const engine = new Engine(library);
    engine.load(file);
    const edited = { ...cells[0]!, entry: '1/2-13 UNC' };
    const { cells: moved } = engine.apply({ changed: [edited] });
    const fresh = new Engine(library).apply({
      changed: [edited, ...cells.slice(1)],
      settings: settingsOf(file),
    });
    expect(moved.find(({ id }) => id === 'c_major')?.outputs.value?.planned?.value).toBeCloseTo(0.5 * IN, 12);
    for (const cell of moved) expect(cell).toEqual(fresh.cells.find(({ id }) => id === cell.id));
  });

  it('calls for the care of the metal it was taken from', () => {
    const alloy = ofKind('material', 'alloy', { material: 'magnesium-az91' });
    const key = [...library.tables.get('materials')!.rows].find(({ note }) => note)!.key;
    alloy.inputs = { material: key };
    const other = ofKind('material', 'other', { material: '= alloy.material' });
    const from = { library, named: (name: string) => [alloy, other].find((one) => one.name === name) };
    expect(careOf(other, from)).toEqual(careOf(alloy, from));
    expect(careOf(alloy, from).length).toBeGreaterThan(0);
  });
});

describe('a tolerance class can be taken from another line', () => {
  const classed = (shaft_class: string) => ofKind('iso-fit', 'fit', { nominal: '50 mm', shaft_class });
  const seat = (tolerance: string, entry = '50 mm', role: CellRecord['role'] = 'chosen') =>
    plain('seat', role, entry, { tolerance });

  it.each([
    ['50 mm', 'chosen'],
    ['= fit.nominal', 'chosen'],
    ['= fit.nominal', 'worked'],
  ] as const)('and is cut to as if it were written: %s, %s', (entry, role) => {
    const sheet = worked([classed('k6'), seat('= fit.shaft_class', entry, role)]);
    expect(sheet.byName('seat')).toMatchObject({ problems: [], echoes: { tolerance: 'k6' } });
    const typed = worked([classed('k6'), seat('k6', entry, role)]);
    expect(sheet.byName('seat')!.outputs).toEqual(typed.byName('seat')!.outputs);
    // ISO 286-2:2010, 50 k6: +18 +2 um
    expect(sheet.figure('seat').low).toBeCloseTo(0.050002, 9);
    expect(sheet.figure('seat').high).toBeCloseTo(0.050018, 9);
  });

  it('follows the line it is taken from, waits for it, and is refused where it is no class', () => {
    const file = sheetOf([classed('k6'), seat('= fit.shaft_class')]);
    const engine = new Engine(library);
    engine.load(file);
    const moved = engine.apply({ changed: [classed('m6')] }).cells.find(({ id }) => id === 'c_seat');
    expect(moved).toEqual(worked([classed('m6'), seat('= fit.shaft_class')]).byName('seat'));
    expect(said([classed(''), seat('= fit.shaft_class')], 'seat')).toMatch(/waits: `fit` has no shaft yet/);
    expect(said([classed('k6'), seat('= fit.nominal')], 'seat')).toMatch(
      /`fit.nominal` is a figure and no choice/,
    );
    const sheet = SheetDocument.fromFile(file, { id: 'job' });
    sheet.setField('c_fit', 'name', 'bearing_fit');
    expect(sheet.cell('c_seat')!.tolerance).toBe('= bearing_fit.shaft_class');
  });
});

describe('a line named by another can be taken from it', () => {
  const metal = (name: string, material: string) => ofKind('material', name, { material });
  const long = (name: string, material: string) =>
    ofKind('linear-expansion', name, { size: '2 in', material, temperature: '168 degF' });
  const cells = (named: string) => [
    metal('steel', '1045'),
    metal('iron', 'gray-iron-30'),
    long('rod', named),
    long('tube', '= rod.material'),
    long('sleeve', 'tube.material'),
  ];

  it.each(['iron', '= steel'])('through any number of lines: %s', (named) => {
    const sheet = worked(cells(named));
    const plain = worked([...cells(named).slice(0, 2), long('sleeve', named)]);
    expect(sheet.byName('sleeve')!.problems).toEqual([]);
    expect(sheet.byName('sleeve')!.outputs.change?.planned).toEqual(
      plain.byName('sleeve')!.outputs.change?.planned,
    );
  });

  it('follows an edit of the line it is taken from, as a sheet built anew does', () => {
    const file = sheetOf(cells('iron'));
    const engine = new Engine(library);
    engine.load(file);
    const edited = long('rod', 'steel');
    const moved = engine.apply({ changed: [edited] }).cells.find(({ id }) => id === 'c_sleeve');
    const fresh = worked(cells('steel')).byName('sleeve');
    expect(moved?.outputs.change?.planned).toEqual(fresh?.outputs.change?.planned);
  });

  it('waits where none is named, and says what is wrong where it is', () => {
    const output = worked(cells('')).byName('sleeve')?.outputs.change;
    expect(output?.problem).toMatchObject({ kind: 'blank', originId: 'c_rod' });
    expect(said(cells('rod'), 'rod')).toMatch(/`rod` is not a material cell: material wants/);
    expect(said(cells('= nobody'), 'sleeve')).toBe('');
    expect(said([...cells('iron'), long('ring', '= ring.material')], 'ring')).toMatch(/in a ring/);
    expect(said([...cells('iron'), long('ring', '= rod.size')], 'ring')).toMatch(
      /`rod` names no material cell as `size`/,
    );
  });
});

it('a choice taken from another line follows its name, written with and without the equals sign', () => {
  const file = sheetOf([
    thread('old', '3/8-16 UNC'),
    thread('next', '= old.thread'),
    thread('later', 'old.thread'),
  ]);
  const sheet = SheetDocument.fromFile(file, { id: 'job' });
  sheet.setField('c_old', 'name', 'old_thread');
  expect(sheet.cell('c_next')!.inputs!.thread).toBe('= old_thread.thread');
  expect(sheet.cell('c_later')!.inputs!.thread).toBe('old_thread.thread');
  sheet.undo();
  expect(sheet.toFile()).toEqual(file);
});

describe('a key of an earlier edition', () => {
  it.each([
    ['17-4ph', 's17400'],
    ['invar', 'feni36'],
  ])('%s is read as %s, and stays as it stands in the sheet', (old, now) => {
    const [was, is] = [old, now].map((material) => worked([ofKind('material', 'metal', { material })]));
    for (const output of ['E', 'alpha', 'yield'])
      expect(was!.output('metal', output).planned?.value).toBe(is!.output('metal', output).planned?.value);
    expect(was!.byName('metal')?.problems).toEqual([]);
    expect(said([ofKind('material', 'metal', { material: 'no-such-metal' })], 'metal')).toContain(
      'not in the table',
    );
  });
});
