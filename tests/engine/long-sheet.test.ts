import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { Engine } from '../../src/engine/engine.ts';
import { inch, inches, plain, SQRT3 } from './closed-form.ts';
import { sheetOf } from './random-sheet.ts';

const LENGTH = 2000;

/** Each cell the one before and a thou, every tenth with a tolerance of its own; without a kind of quantity. */
const chain: CellRecord[] = Array.from({ length: LENGTH }, (_, i) => ({
  id: `c${i}`,
  name: `a${i}`,
  role: i === 0 ? 'given' : 'worked',
  entry: i === 0 ? '1 in ± .001 in' : `=a${i - 1} + .001 in${i % 10 === 0 ? ' ± .0001 in' : ''}`,
}));

describe('a chain of two thousand cells', () => {
  it.each([
    ['in order', chain],
    ['from the end', [...chain].reverse()],
  ])('%s is added up right', (_, cells) => {
    const sheet = computeSheet(sheetOf(cells), library);
    const last = sheet.byName(`a${LENGTH - 1}`)?.outputs.value;
    const own = Math.floor((LENGTH - 1) / 10);
    const value = 1 + 0.001 * (LENGTH - 1);
    expect(last?.quantity).toBe('length');
    expect(last?.planned?.value).toBeCloseTo(value * inch, 10);
    expect(last?.planned?.low).toBeCloseTo((value - 0.001 - 0.0001 * own) * inch, 10);
    expect(last?.planned?.u).toBeCloseTo((Math.hypot(0.001, 0.0001 * Math.sqrt(own)) / SQRT3) * inch, 12);
  });

  it('closed to a ring says so in a sentence, and opens again', () => {
    const engine = new Engine(library);
    engine.load(sheetOf(chain));
    const first = chain[1] as CellRecord;
    const closed = engine.apply({ changed: [{ ...first, entry: `=a${LENGTH - 1}` }] });
    const said = closed.cells.find(({ id }) => id === 'c1000')?.outputs.value?.problem;
    expect(said?.kind).toBe('ring');
    expect(said?.message).toMatch(/ring: a1000 → a999 → .* → … → a1000\./);
    const opened = engine.apply({ changed: [first] });
    const middle = opened.cells.find(({ id }) => id === 'c1000')?.outputs.value;
    expect(middle?.planned?.value).toBeCloseTo(2 * inch, 10);
    engine.destroy();
  });
});

it('rings that share cells are told alike, whatever order the cells come in', () => {
  const cells = [
    plain('a', 'worked', '=b'),
    plain('b', 'worked', '=c + a'),
    plain('c', 'worked', '=d'),
    plain('d', 'worked', '=c'),
    plain('e', 'worked', '=a'),
  ];
  const said = (order: CellRecord[]) => {
    const sheet = inches(order);
    return ['a', 'b', 'c', 'd', 'e'].map((name) =>
      sheet.output(name).problem?.message.replace(/\. Give.*/, ''),
    );
  };
  const told = [
    'These hang on each other in a ring: a → b → a',
    'These hang on each other in a ring: b → a → b',
    'These hang on each other in a ring: c → d → c',
    'These hang on each other in a ring: d → c → d',
    'Waits for `a`, in error: These hang on each other in a ring: a → b → a',
  ];
  expect(said(cells)).toEqual(told);
  expect(said([...cells].reverse())).toEqual(told);
  expect(said([2, 0, 4, 1, 3].map((i) => cells[i] as CellRecord))).toEqual(told);
});
