import { expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { sheetOf } from '../random-sheet.ts';

const line = (name: string, role: 'measured' | 'given' | 'worked', entry: string): CellRecord =>
  ({ id: name, role, name, quantity: 'length', entry }) as CellRecord;

const askedOf = (cells: CellRecord[]): string[] =>
  computeSheet({ ...sheetOf(cells), units: { length: 'in' } }, library).cells.flatMap(({ id, slips }) =>
    slips.map(({ key }) => `${id} ${key}`),
  );

const bores = (after: string): CellRecord[] => [
  line('bore_before', 'measured', '1.2500 in'),
  line('bore_after', 'measured', after),
  line('close_in', 'worked', '= bore_before - bore_after'),
];
const pressed = [
  line('housing', 'measured', '1.5000 in'),
  line('bush_outside', 'measured', '1.5020 in'),
  line('interference', 'worked', '= bush_outside - housing'),
];

// A ring pressed on outside closes in by at most 1 / sqrt(1 - nu^2) of it: plane stress, no housing gives less than none.
test.each([
  ['1.2484 in', []],
  ['1.2480 in', []],
  ['1.2470 in', ['close_in close-in:entry']],
  ['1.2420 in', ['close_in close-in:entry']],
])('a bore that came out at %s, pressed by 0.0020 in', (after, found) => {
  expect(askedOf([...bores(after), ...pressed])).toEqual(found);
  expect(askedOf([...pressed, ...bores(after)])).toEqual(found);
});

test('one that is given is held to it, and nothing is asked where no interference is known', () => {
  const given = line('close_in', 'given', '0.0080 in');
  expect(askedOf([line('interference', 'given', '0.0020 in'), given])).toEqual(['close_in close-in:entry']);
  expect(askedOf([given])).toEqual([]);
  expect(askedOf(bores('1.2420 in'))).toEqual([]);
});

// The bore before and after are read, and the cell of the bush names its interference.
test.each([
  ['= bore_before - bore_after', '= interference'],
  ['= bore_before - bore_after', '= bush_outside - housing'],
  ['0.0060 in', '= interference'],
])('a cell of the library that came out at %s is held to its interference, %s', (entry, interference) => {
  const press: CellRecord = {
    id: 'press',
    role: 'cell',
    kind: 'bush-close-in',
    edition: 1,
    name: 'press',
    inputs: { interference, bush_outside: '1.5020 in', bush_bore: '1.2500 in' },
    outputs: { close_in: { measured: { entry } } },
  };
  const read = bores('1.2440 in').slice(0, 2);
  expect(askedOf([...pressed, ...read, press])).toEqual(['press close-in:outputs.close_in.measured.entry']);
});
