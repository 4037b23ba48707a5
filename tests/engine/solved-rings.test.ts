import { describe, expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { Engine } from '../../src/engine/engine.ts';
import { TrialSheet } from '../../src/engine/trial/trial-sheet.ts';
import { windowOf } from '../../src/engine/window/window.ts';
import { Desk } from '../../src/engine/workback/desk.ts';
import { inch, inches, ofKind, plain } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

const file = (cells: CellRecord[]): SheetFile => ({ ...sheetOf(cells), units: { length: 'in' } });
const solved = (name: string, entry: string, more: Partial<CellRecord> = {}): CellRecord =>
  plain(name, 'chosen', entry, { solved: true, ...more });

/** A bush bored before it is pressed: what its bore closes in depends on the wall, and the wall on the bore. */
const press = (bore: CellRecord): CellRecord[] => [
  plain('finished', 'given', '1.7500 in'),
  plain('outside', 'chosen', '2.2500 in', { tolerance: '± 0.0002 in' }),
  plain('housing', 'measured', '2.2480 in ± 0.0001 in'),
  ofKind('bush-close-in', 'close', {
    bush_outside: 'outside',
    bush_bore: 'bore',
    interference: '= outside - housing',
    housing_outside: '3.75 in ± 0.06 in',
    bush_material: 'bronze',
    housing_material: 'iron',
  }),
  ofKind('material', 'bronze', { material: 'c93200' }),
  ofKind('material', 'iron', { material: 'gray-iron-30' }),
  bore,
  plain('pressed', 'worked', '= bore - close.close_in', {
    limits: { lower: '1.7495 in', upper: '1.7505 in' },
  }),
];
const bored = solved('bore', '= finished + close.close_in', { tolerance: '± 0.0002 in' });

describe('a size that depends on itself', () => {
  // By hand: a = b / 2 + 1 in, b = a / 2, so a = 4/3 in.
  test('is the one that comes out as it goes in', () => {
    const sheet = inches([solved('a', '= b / 2 + 1 in'), plain('b', 'worked', '= a / 2')]);
    expect(sheet.figure('a').value / inch).toBeCloseTo(4 / 3, 14);
    expect(sheet.figure('b').value / inch).toBeCloseTo(2 / 3, 14);
  });
  test('is refused until it is asked for, with what to do', () => {
    const sheet = inches([plain('a', 'chosen', '= b / 2 + 1 in'), plain('b', 'worked', '= a / 2')]);
    expect(sheet.output('a').problem?.message).toMatch(/in a ring: a → b → a\. .*have one of them solved/);
  });
  test('may stand in no ring at all', () => {
    const sheet = inches([solved('a', '= b + 1 in'), plain('b', 'given', '2 in')]);
    expect(sheet.figure('a').value / inch).toBeCloseTo(3, 14);
  });
  // A second method: the plain way round, a bore typed in and the sheet worked out for it, over and over.
  test('is where going round and round ends, through a cell of the library', () => {
    const once = inches(press(bored));
    let at = 1.75;
    for (let i = 0; i < 8; i++) {
      const sheet = inches(press(plain('bore', 'chosen', `${at} in`)));
      at = 1.75 + sheet.figure('close', 'close_in').value / inch;
    }
    expect(once.figure('bore').value / inch).toBeCloseTo(at, 12);
    expect(once.figure('pressed').value / inch).toBeCloseTo(1.75, 12);
    // What it can be cut off goes on from it as from any size that is chosen.
    const typed = inches(press(plain('bore', 'chosen', `${at} in`, { tolerance: '± 0.0002 in' })));
    for (const of of ['low', 'high', 'u'] as const)
      expect(once.figure('pressed')[of] / inch).toBeCloseTo(typed.figure('pressed')[of] / inch, 10);
    expect(once.output('pressed').check.words).toBe(typed.output('pressed').check.words);
  });
  test('takes a class for its tolerance', () => {
    const sheet = inches([
      solved('a', '= b / 2 + 1 in', { tolerance: 'H7' }),
      plain('b', 'worked', '= a / 2'),
    ]);
    const typed = inches([plain('a', 'chosen', `${4 / 3} in`, { tolerance: 'H7' })]);
    expect(sheet.figure('a').high).toBeCloseTo(typed.figure('a').high, 12);
  });
  test('two rings, one above the other, are each solved', () => {
    const sheet = inches([
      solved('a', '= b / 2 + 1 in'),
      plain('b', 'worked', '= a / 2'),
      solved('c', '= d / 4 + a'),
      plain('d', 'worked', '= c'),
    ]);
    expect(sheet.figure('c').value / inch).toBeCloseTo((4 / 3) * (4 / 3), 13);
  });
  test('is worked out anew with every edit, as if the sheet were new', () => {
    const cells = press(bored);
    const engine = new Engine(library);
    const results = new Map(engine.load(file(cells)).cells.map((cell) => [cell.id, cell]));
    for (const change of [
      plain('finished', 'given', '1.6000 in'),
      plain('housing', 'measured', '2.2470 in ± 0.0001 in'),
      plain('finished', 'given', '= 1.6 in + 5 thou'),
      plain('bore', 'chosen', '1.61 in', { tolerance: '± 0.0002 in' }),
      bored,
      { ...bored, entry: '= finished + close.close_in + 1 thou' },
      { ...bored, solved: false },
      bored,
    ]) {
      const at = cells.findIndex(({ id }) => id === change.id);
      cells[at] = change;
      for (const cell of engine.apply({ changed: [change] }).cells) results.set(cell.id, cell);
      const anew = new Engine(library);
      const fresh = anew.load(file(cells)).cells;
      expect(cells.map(({ id }) => results.get(id))).toEqual(
        cells.map(({ id }) => fresh.find((cell) => cell.id === id)),
      );
      anew.destroy();
    }
    engine.destroy();
  });
  test('is worked back through, and has a window', () => {
    const trial = new TrialSheet(library);
    trial.load(file(press(bored)));
    const [one] = new Desk(trial).workBack({
      figure: { cell: 'c_bore', output: 'value' },
      want: '1.7000 in',
      change: { cell: 'c_finished', field: 'entry' },
    }).solutions;
    const sheet = inches(
      press(bored).map((cell) => (cell.id === 'c_finished' ? { ...cell, entry: one?.text ?? '' } : cell)),
    );
    expect(sheet.figure('bore').value / inch).toBeCloseTo(1.7, 5);
    const window = windowOf(trial, { cell: 'c_finished', field: 'entry' });
    expect(window.is).toBe('found');
    trial.destroy();
  });
});

describe('a size that is worked out and depends on itself', () => {
  // By hand: a = b / 2 + c, b = k a, so a = c / (1 - k / 2), which rises with c and with k.
  const ring = (c: string, k: string) =>
    inches([
      plain('c', 'given', c),
      plain('k', 'given', k, { quantity: 'number' }),
      solved('a', '= b / 2 + c', { role: 'worked', limits: { lower: '1.1 in', upper: '1.6 in' } }),
      plain('b', 'worked', '= k * a'),
      plain('apart', 'worked', '= a - c'),
    ]);
  test('is solved with the spread of all that stands outside', () => {
    const sheet = ring('1 in ± 0.1 in', '0.5 ± 0.1');
    const { value, low, high, atMost } = sheet.figure('a');
    expect(value / inch).toBeCloseTo(4 / 3, 12);
    expect(low / inch).toBeCloseTo(0.9 / 0.8, 12);
    expect(high / inch).toBeCloseTo(1.1 / 0.7, 12);
    expect(atMost).toBeUndefined();
    expect(sheet.output('a').check.words).toMatch(/^holds/);
    // What it shares with another drops out: a - c = c (k / 2) / (1 - k / 2).
    expect(sheet.figure('apart').low / inch).toBeCloseTo(0.9 * (0.2 / 0.8), 12);
    expect(sheet.figure('apart').high / inch).toBeCloseTo(1.1 * (0.3 / 0.7), 12);
  });
  test('has no end where the spread reaches a place without an answer', () => {
    expect(ring('1 in ± 0.1 in', '1.5 ± 0.5').figure('a').high).toBe(Number.POSITIVE_INFINITY);
  });
  // As before, the plain way round; the bore is now typed into the library cell itself.
  test('may be an input of a library cell, its spread and all', () => {
    const [finished, outside, housing, close, bronze, iron] = press(bored) as CellRecord[];
    const into = (entry: string): CellRecord => ({
      ...(close as CellRecord),
      inputs: { ...close?.inputs, bush_bore: entry },
    });
    const sheetWith = (cell: CellRecord) =>
      inches([finished, outside, housing, cell, bronze, iron] as CellRecord[]);
    let at = 1.75;
    for (let i = 0; i < 8; i++)
      at = 1.75 + sheetWith(into(`${at} in`)).figure('close', 'close_in').value / inch;
    const ring = sheetWith({ ...into('= finished + close.close_in'), solved: true });
    const typed = sheetWith(into(`${at} in`));
    const [one, other] = [ring, typed].map((sheet) => sheet.figure('close', 'close_in'));
    expect(one?.value).toBeCloseTo(other?.value ?? 0, 14);
    // A thicker wall closes in less: the spread goes round once more, by a few hundredths of itself.
    const width = (figure = one): number => (figure?.high ?? 0) - (figure?.low ?? 0);
    expect(width(one) / width(other)).toBeGreaterThan(0.9);
    expect(width(one) / width(other)).toBeLessThan(1.1);
    expect(
      sheetWith(into('= finished + close.close_in')).output('close', 'close_in').problem?.message,
    ).toMatch(/in a ring/);
    expect(ring.output('close', 'close_in').check.words).not.toMatch(/proven/);
  });
});

describe('a ring without one answer says so', () => {
  const said = (...cells: CellRecord[]) => inches(cells).output('a').problem?.message;
  test('none', () => {
    expect(said(solved('a', '= b + 1 in'), plain('b', 'worked', '= a'))).toMatch(/no size does/);
  });
  // x^2 - 4 x + 3 = 0 has 1 and 3: x = (x^2 + 3) / 4.
  test('two', () => {
    expect(said(solved('a', '= (b * b / 1 in + 3 in) / 4'), plain('b', 'worked', '= a'))).toMatch(
      /2 sizes do \(1\.0000 in, 3\.0000 in\)/,
    );
  });
  test('any', () => {
    expect(said(solved('a', '= b - 1 in'), plain('b', 'worked', '= a + 1 in'))).toMatch(
      /any size does|sizes do/,
    );
  });
  test('one that is missing on the way', () => {
    expect(said(solved('a', '= b + c'), plain('b', 'worked', '= a / 2'), plain('c', 'given', ''))).toMatch(
      /c/,
    );
  });
  test('two that are solved in one ring', () => {
    expect(said(solved('a', '= b / 2 + 1 in'), solved('b', '= a / 2'))).toMatch(
      /`a` and `b` are all to be solved in it, and one ring has one answer/,
    );
  });
  test('one worked out, where another of the ring is chosen and stands still', () => {
    expect(
      said({ ...solved('a', '= b / 2 + 1 in'), role: 'worked' }, plain('b', 'chosen', '= a / 2')),
    ).toMatch(/cannot be solved at `a`, for `b` is chosen .* have `b` solved/);
  });
  test('one that leaves a ring beside it', () => {
    expect(
      said(solved('a', '= b / 2 + c'), plain('b', 'worked', '= a / 2 + c'), plain('c', 'worked', '= b / 4')),
    ).toMatch(/cannot be solved at `a` alone/);
  });
  test('a length is never less than nothing where another answers', () => {
    // x = (x^2 - 3 x - 4 + 0.5 x) ...: x^2 - 3 x - 4 = 0 has 4 and -1.
    const sheet = inches([solved('a', '= (b * b / 1 in - 4 in) / 3'), plain('b', 'worked', '= a')]);
    expect(sheet.figure('a').value / inch).toBeCloseTo(4, 12);
  });
});
