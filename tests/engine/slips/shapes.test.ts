import fc from 'fast-check';
import { expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import { sheetOf } from '../random-sheet.ts';

const resultOf = (entry: string) => {
  const bore = { id: 'bore', role: 'measured', name: 'bore', quantity: 'length', entry } as CellRecord;
  const sheet = { ...sheetOf([bore]), units: { length: 'in' as const } };
  return computeSheet(sheet, library).cells.find(({ id }) => id === 'bore');
};

test.each([
  '1.7481; 1.7480; 1.7482 | 1.7481; 1.7480; 1.7481 | 1.7480; 1.7480 in',
  '1.7481; 1.7480; 1.7482; 1.7481 | 1.7480; 1.7481; 1.7480 in',
  '1.7481; 1.7480; 1.7482 | 1.7481; 1.7480 | 1.7480; 1.7480 in',
])('a place that is a reading short is worked out: %s', (entry) => {
  expect(resultOf(entry)?.outputs.value?.measured ?? resultOf(entry)?.outputs.value?.planned).toBeDefined();
});

it('lists of any shape are worked out, with an odd one among them or none', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.integer({ min: 17475, max: 17485 }), { minLength: 1, maxLength: 6 }), {
        minLength: 1,
        maxLength: 5,
      }),
      fc.nat(),
      fc.constantFrom(0, 250, 10_000, -17_000, 157_000),
      (stations, at, off) => {
        const all = stations.flat();
        const odd = at % all.length;
        let n = 0;
        const written = stations.map((station) =>
          station.map((count) => ((count + (n++ === odd ? off : 0)) / 1e4).toFixed(4)).join('; '),
        );
        const value = resultOf(`${written.join(' | ')} in`)?.outputs.value;
        const sum = all.reduce((a, b) => a + b, 0) + off;
        const figure = value?.measured ?? value?.planned;
        expect(figure?.value).toBeCloseTo((sum / all.length / 1e4) * 0.0254, 10);
      },
    ),
    { seed: 20261130, numRuns: 100 },
  );
});
