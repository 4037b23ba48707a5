import { afterEach, describe, expect, it, vi } from 'vitest';
import { library as whole } from '../../cells/catalogue.ts';
import type { CellKind, TradeFunction } from '../../cells/record/cell.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { Engine } from '../../src/engine/engine.ts';
import { GuardedEngine } from '../../src/engine/guarded-engine.ts';
import type { Library } from '../../src/engine/rows/library.ts';
import type { CellResult, SheetResults } from '../../src/engine/rows/results.ts';

afterEach(() => vi.restoreAllMocks());

/** A function of the trade that throws where a size is greater than 30 mm. */
const brittle: TradeFunction = {
  ...whole.functions[0]!,
  name: 'BRITTLE_FOR_TEST',
  takes: [{ name: 'size', quantity: 'length' }],
  gives: 'length',
  compute: (size) => {
    if (Number(size) > 0.03) throw new RangeError('Invalid array length');
    return Number(size);
  },
};

/** A kind of cell over whose record assembling throws. */
const broken = {
  ...whole.kinds.get('wall-left')!,
  key: 'broken',
  get validity(): never {
    throw new TypeError('Cannot read properties of undefined');
  },
} as unknown as CellKind;

const library: Library = {
  kinds: new Map([...whole.kinds, ['broken', broken]]),
  tables: whole.tables,
  functions: [...whole.functions, brittle],
};

const fileOf = (...cells: CellRecord[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 1,
  title: { title: 'Feed gearbox' },
  units: { length: 'mm' },
  rule: 'worst-case',
  cells,
});

const bore: CellRecord = {
  id: 'a',
  role: 'measured',
  name: 'bore',
  quantity: 'length',
  entry: '20.00 mm ± 0.01 mm',
  limits: { lower: '19.9 mm', upper: '20.1 mm' },
};
const twice: CellRecord = { id: 'b', role: 'worked', name: 'twice', quantity: 'length', entry: '= 2 * bore' };
const bad: CellRecord = {
  id: 'c',
  role: 'cell',
  kind: 'broken',
  name: 'wall',
  inputs: { bore: '= bore', outside: '30 mm', offset: '0 mm' },
};
const below: CellRecord = {
  id: 'd',
  role: 'worked',
  name: 'below',
  quantity: 'length',
  entry: '= 2 * wall.thinnest',
};

const taking = (into: Map<string, CellResult>) => (results: SheetResults) => {
  for (const cell of results.cells) into.set(cell.id, cell);
  for (const id of results.gone) into.delete(id);
};

const figuresIn = (cell: CellResult | undefined): unknown[] =>
  Object.values(cell?.outputs ?? {})
    .flatMap(({ planned, measured }) => [planned, measured])
    .filter(Boolean);

describe('a fault of the program over one line', () => {
  it('in assembling it, costs that line alone, and what hangs on it says so', () => {
    const plain = computeSheet(fileOf(bore, twice), whole);
    const found = computeSheet(fileOf(bad, bore, below, twice), library);
    expect(found.byName('bore')).toEqual(plain.byName('bore'));
    expect(found.byName('twice')).toEqual(plain.byName('twice'));
    const wall = found.byName('wall');
    expect(wall?.problems[0]).toMatchObject({
      kind: 'fault',
      message: expect.stringContaining('Cannot read'),
    });
    expect(figuresIn(wall)).toEqual([]);
    expect(figuresIn(found.byName('below'))).toEqual([]);
    expect(found.byName('below')?.outputs.value?.problem?.message).toContain('`wall`');
  });

  it('as an edit, leaves no figure and no verdict of before; a later edit brings them back', () => {
    const engine = new GuardedEngine(library);
    const seen = new Map<string, CellResult>();
    const take = taking(seen);
    const good: CellRecord = { ...bad, kind: 'wall-left' };
    take(engine.load(fileOf(bore, good, below, twice)));
    expect(figuresIn(seen.get('d'))).toHaveLength(1);
    take(engine.apply({ changed: [bad] }));
    expect(seen.get('c')?.problems[0]?.kind).toBe('fault');
    expect(figuresIn(seen.get('c'))).toEqual([]);
    expect(figuresIn(seen.get('d'))).toEqual([]);
    expect(seen.get('a')?.outputs.value?.check.asNew.state).toBe('proven in limits');
    // Other lines go on.
    take(engine.apply({ changed: [{ ...bore, entry: '20.50 mm ± 0.01 mm' }] }));
    expect(seen.get('a')?.outputs.value?.check.asNew.state).toBe('out of limits');
    expect(seen.get('b')?.outputs.value?.planned?.value).toBeCloseTo(0.041, 12);
    take(engine.apply({ changed: [good, bore] }));
    const plain = new Map(
      computeSheet(fileOf(bore, good, below, twice), whole).cells.map((one) => [one.id, one]),
    );
    expect(seen).toEqual(plain);
    engine.destroy();
  });

  it('in a function of the trade, is an error of the line that calls it', () => {
    const call: CellRecord = {
      id: 'e',
      role: 'worked',
      name: 'called',
      entry: '= BRITTLE_FOR_TEST(bore + 15 mm)',
    };
    const engine = new GuardedEngine(library);
    const seen = new Map<string, CellResult>();
    const take = taking(seen);
    take(engine.load(fileOf(bore, { ...call, entry: '= BRITTLE_FOR_TEST(bore)' }, twice)));
    expect(figuresIn(seen.get('e'))).toHaveLength(1);
    take(engine.apply({ changed: [call] }));
    expect(figuresIn(seen.get('e'))).toEqual([]);
    expect(seen.get('e')?.outputs.value?.problem?.message).toContain('Invalid array length');
    expect(seen.get('b')).toEqual(computeSheet(fileOf(bore, twice), whole).byName('twice'));
    engine.destroy();
  });

  it('anywhere after assembling, is found by leaving lines out', () => {
    const cells = Array.from({ length: 30 }, (_, i): CellRecord => ({ ...bore, id: `n${i}`, name: `n${i}` }));
    const plain = new Map(computeSheet(fileOf(...cells), whole).cells.map((one) => [one.id, one]));
    const { begin } = Engine.prototype;
    const load = vi.spyOn(Engine.prototype, 'load').mockImplementation(() => {
      throw new RangeError('over the sheet');
    });
    vi.spyOn(Engine.prototype, 'begin').mockImplementation(function (this: Engine, sheet) {
      const { faults } = (this as unknown as { assembly: { faults: ReadonlyMap<string, string> } }).assembly;
      if (sheet.records.has('n17') && !faults.has('n17')) throw new RangeError('over line 17');
      return begin.call(this, sheet);
    });
    const engine = new GuardedEngine(whole);
    const seen = new Map<string, CellResult>();
    taking(seen)(engine.load(fileOf(...cells)));
    expect(load).toHaveBeenCalledTimes(1);
    expect(seen.get('n17')?.problems[0]).toMatchObject({ kind: 'fault' });
    seen.delete('n17');
    plain.delete('n17');
    expect(seen).toEqual(plain);
  });

  it('over the whole sheet, takes every figure away and says so, and is over with the fault', () => {
    const engine = new GuardedEngine(whole);
    const seen = new Map<string, CellResult>();
    const take = taking(seen);
    take(engine.load(fileOf(bore, twice)));
    const fail = (): never => {
      throw new Error('nothing goes');
    };
    vi.spyOn(Engine.prototype, 'apply').mockImplementation(fail);
    vi.spyOn(Engine.prototype, 'begin').mockImplementation(fail);
    take(engine.apply({ changed: [twice] }));
    for (const cell of seen.values()) {
      expect(figuresIn(cell)).toEqual([]);
      expect(cell.outputs.value?.check.asNew.state).toBe('entry in error');
      expect(cell.problems[0]).toMatchObject({
        kind: 'fault',
        message: expect.stringContaining('nothing goes'),
      });
    }
    vi.restoreAllMocks();
    take(engine.apply({ changed: [twice] }));
    expect(seen).toEqual(new Map(computeSheet(fileOf(bore, twice), whole).cells.map((one) => [one.id, one])));
  });
});
