import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { handbook } from '../../../cells/handbook.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import {
  inOwnUnits,
  type QuantityAt,
  settledTexts,
  textsInDoubt,
} from '../../../src/document/sharing/own-units.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { quantityAt as pageQuantityAt } from '../../../src/page/state/quantity-at.ts';
import { printOf as fingerprint } from '../prints.ts';
import { bushJob } from '../sample.ts';

const quantityAt: QuantityAt = (cell, field) => {
  const kind = library.kinds.get(cell.kind ?? '');
  const [part, name] = field.split('.');
  if (part === 'inputs') return kind?.inputs.find((input) => input.name === name)?.quantity;
  return kind?.outputs.find((output) => output.name === name)?.quantity;
};

const sheet = (cells: CellRecord[]): SheetFile => ({ ...bushJob(), variants: [], cells });

describe('a sheet from a shop that works in the other system', () => {
  it('is read in our own units with the same fingerprint and the same values, bit for bit', () => {
    const theirs = sheet([
      { id: 'a', role: 'given', name: 'bore', quantity: 'length', entry: '2.2513 in' },
      { id: 'b', role: 'chosen', name: 'od', entry: '=bore + 3 thou', tolerance: '+0.0005 -0 in' },
      { id: 'c', role: 'given', name: 't', quantity: 'temperature', entry: '74 degF' },
      {
        id: 'd',
        role: 'worked',
        name: 'twice',
        entry: '=2 * (od - bore)',
        limits: { upper: '8 thou' },
        display: 'thou',
      },
    ]);
    const { file: ours, kept } = inOwnUnits(theirs, 'mm', quantityAt);
    expect(kept).toEqual([]);
    expect(ours.units).toEqual({ length: 'mm', ton: 'short_ton' });
    // What was shown in thou is a step here too: read in micrometres, not in a unit this shop does not use.
    expect(ours.cells.map(({ display }) => display)).toEqual([undefined, undefined, undefined, 'um']);
    expect(fingerprint(ours)).toBe(fingerprint(theirs));
    const figures = (file: SheetFile) =>
      new Engine(library)
        .load(file)
        .cells.map(({ id, outputs }) => [
          id,
          Object.values(outputs).map(({ planned, measured, check }) => ({ planned, measured, check })),
        ]);
    expect(figures(ours)).toEqual(figures(theirs));
  });

  it('is shown in tenths and microinches again when it comes home', () => {
    const units = ['tenth_in', 'uin', 'thou', 'in', undefined];
    const home = sheet([
      ...units.map(
        (display, i): CellRecord => ({
          id: `c${i}`,
          role: 'given',
          entry: '2 thou',
          ...(display && { display }),
        }),
      ),
      { id: 'k', role: 'cell', kind: 'bush-close-in', outputs: { close_in: { display: 'tenth_in' } } },
    ]);
    const away = inOwnUnits(home, 'mm', quantityAt).file;
    expect(away.cells.map(({ display }) => display)).toEqual(['um', 'um', 'um', 'mm', undefined, undefined]);
    expect(fingerprint(away)).toBe(fingerprint(home));
    expect(inOwnUnits(away, 'in', quantityAt).file.cells).toEqual(home.cells);
    // What was chosen there since is what counts.
    away.cells[0]!.display = 'mm';
    expect(inOwnUnits(away, 'in', quantityAt).file.cells[0]!.display).toBe('in');
  });

  it('reads no bare temperature on another scale, of a line or of the title block', () => {
    const bare = sheet([{ id: 't', role: 'given', quantity: 'temperature', entry: '68' }]);
    const inch: SheetFile = { ...bare, units: { length: 'in', temperature: 'degF' } };
    expect(inOwnUnits(inch, 'mm', quantityAt).kept.map(({ id }) => id)).toEqual(['t']);
    const titled = { ...sheet([]), units: { length: 'in' as const } };
    titled.title = { ...titled.title, referenceTemperature: '68' };
    expect(inOwnUnits(titled, 'mm', quantityAt).file.title.referenceTemperature).toBe('68 degF');
  });

  it('keeps a gear module in millimetres', () => {
    const theirs = sheet([{ id: 'm', role: 'given', quantity: 'gear module', entry: '3' }]);
    const { file, kept } = inOwnUnits({ ...theirs, units: { length: 'mm' } }, 'in', quantityAt);
    expect(kept).toEqual([]);
    expect(displayUnit('gear module', file.units).symbol).toBe('mm');
  });

  it.each([
    ['entry', { role: 'given', quantity: 'length', entry: '2.25' }],
    ['formula', { role: 'worked', quantity: 'length', entry: '=bore + .003 in', limits: { upper: '2.5' } }],
    ['tolerance', { role: 'chosen', quantity: 'length', entry: '2.25 in', tolerance: '+.0005 -0' }],
    ['temperature', { role: 'given', quantity: 'temperature', entry: '68' }],
    ['input', { role: 'cell', kind: 'linear-expansion', inputs: { size: '12' } }],
  ] as Array<[string, Omit<CellRecord, 'id'>]>)(
    'stays in its units where a number has none: %s',
    (_, cell) => {
      const theirs = sheet([
        { id: 'x', role: 'given', name: 'bore', quantity: 'length', entry: '2 in' },
        { id: 'y', ...cell },
      ]);
      const { file, kept } = inOwnUnits(theirs, 'mm', quantityAt);
      expect(file).toBe(theirs);
      expect(kept.map(({ id }) => id)).toEqual(['y']);
    },
  );

  it('keeps numbers that are plain numbers', () => {
    const theirs = sheet([
      { id: 'n', role: 'given', quantity: 'number', entry: '4' },
      { id: 'r', role: 'remark', label: 'Drill 2 holes', note: '2.25' },
    ]);
    expect(inOwnUnits(theirs, 'mm', quantityAt).kept).toEqual([]);
  });
});

describe('templates that come with the program', () => {
  const folder = new URL('../../../templates/', import.meta.url);
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  it.each(names)('%s can be read in inches and in millimetres', (name) => {
    const file = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as SheetFile;
    const other = file.units.length === 'in' ? 'mm' : 'in';
    expect(inOwnUnits(file, other, quantityAt).kept.map((cell) => cell.name ?? cell.id)).toEqual([]);
  });
});

describe('a switch of lengths', () => {
  it('first writes out the unit that numbers without one have had, so that no value changes', () => {
    const cells: CellRecord[] = [
      {
        id: 'a',
        role: 'given',
        name: 'bore',
        quantity: 'length',
        entry: '2.2513 ± .0002',
        limits: { upper: '2.3' },
      },
      {
        id: 'b',
        role: 'chosen',
        name: 'od',
        quantity: 'length',
        entry: '=bore + 3 thou',
        tolerance: '+.0005 -.0001',
      },
      { id: 'c', role: 'given', name: 't', quantity: 'temperature', entry: '74' },
      {
        id: 'd',
        role: 'cell',
        kind: 'wall-left',
        name: 'wall',
        inputs: { outside: '2.75; 2.751', bore: '2.25' },
      },
      { id: 'e', role: 'given', name: 'odd', quantity: 'length', entry: '1,234' },
    ];
    const theirs = { ...sheet(cells), units: { length: 'in' as const } };
    const texts = settledTexts(theirs, 'mm', quantityAt, handbook);
    expect(texts.map(({ cell, field, text }) => `${cell} ${field}: ${text}`)).toEqual([
      'a entry: 2.2513 in ± .0002',
      'a limits.upper: 2.3 in',
      'b tolerance: +.0005 -.0001 in',
      'c entry: 74 degF',
      'd inputs.outside: 2.75; 2.751 in',
      'd inputs.bore: 2.25 in',
    ]);
  });

  it('gives none where it is asked which unit is meant, and the other lengths would not ask', () => {
    const press = library.kinds.get('interference-fit')!;
    const shownSmall = press.outputs.find(({ display }) => display?.in === 'thou')!;
    const theirs = sheet([
      { id: 'a', role: 'given', quantity: 'length', entry: '600' },
      {
        id: 'b',
        role: 'worked',
        quantity: 'length',
        entry: '=1 in',
        display: 'thou',
        limits: { upper: '2' },
      },
      {
        id: 'c',
        role: 'worked',
        quantity: 'length',
        entry: '=1 in',
        display: 'thou',
        limits: { upper: '.5' },
      },
      { id: 'd', role: 'given', quantity: 'length', entry: '2.25 in', limits: { upper: 'x 2' } },
      { id: 'e', role: 'cell', kind: press.key, outputs: { [shownSmall.name]: { limits: { upper: '2' } } } },
    ]);
    const at = pageQuantityAt(library);
    const doubts = textsInDoubt({ ...theirs, units: { length: 'in' } }, 'mm', at, handbook);
    // 2 is asked about in thou as in micrometres; .5 and 600 are asked about in inches alone.
    const open = shownSmall.display?.mm === 'um' ? [] : [`e outputs.${shownSmall.name}.limits.upper`];
    expect(doubts.map(({ cell, field }) => `${cell.id} ${field}`)).toEqual([
      'a entry',
      'c limits.upper',
      ...open,
    ]);
    expect(settledTexts({ ...theirs, units: { length: 'in' } }, 'mm', at, handbook)).toEqual([]);
  });
});
