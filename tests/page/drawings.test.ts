import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { dimensionLine, overEdge } from '../../src/page/kit/dimension-line.ts';
import type { Sheet } from '../../src/page/state/sheet.ts';
import { drawingValues } from '../../src/page/unfolded/drawing-values.ts';

test('figures that reach over the edge of a drawing are told by how much', () => {
  const across = { kind: 'dimension', x1: 10, y1: 50, x2: 90, y2: 50, of: 'size' } as const;
  const sheet = { width: 100, height: 60 };
  const over = (offset: number, characters: number) =>
    overEdge(dimensionLine({ ...across, offset }, 4, characters), 4, characters, sheet);
  expect(over(20, 8)).toEqual({ aside: 0, above: 0, below: 0 });
  // Its line lies 50 over y = 50, its figures stand above that.
  expect(over(50, 8).above).toBeCloseTo(4 + 0.35 * 4, 9);
  expect(over(-14, 8).below).toBeCloseTo(64 - 1.4 + 1.2 - 60, 9);
  expect(over(20, 100).aside).toBeCloseTo(100 * 4 * 0.3 - 50, 9);
});

test('every cell for threads, pins, oil ways, keys and broaching has a drawing', () => {
  const bare = [
    ...['tap-drill', 'thread-for-worn-hole', 'thread-insert', 'drilled-screw', 'turned-head', 'tap-lead'],
    ...['pin-in-shear', 'taper-pin', 'bush-held', 'bush-out', 'oil-hole', 'arc-clocking', 'relief-in-bore'],
    ...['groove-in-bore', 'oil-flow', 'key-size', 'woodruff-key', 'snap-ring-groove', 'broach-passes'],
    ...['broach-guide', 'push-mandrel', 'from-original', 'original-compared'],
  ].filter((key) => library.kinds.get(key)?.drawing === undefined);
  expect(bare).toEqual([]);
});

test('a drawing has sizes that are calculated: arithmetic over lines, over what their cells were given, and defaults', () => {
  const figure = (value: number) => ({ stands: 'planned', planned: { value } });
  const lines: Record<string, unknown> = {
    bore: { record: { role: 'chosen' }, result: { outputs: { value: figure(0.05) } } },
    journal: { record: { role: 'measured' }, result: { outputs: { value: figure(0.0499) } } },
    holes: { record: { role: 'cell', inputs: { drill: '3 mm' } }, result: { outputs: {} } },
    oil: {
      record: {
        role: 'cell',
        inputs: { diameter: '= journal', clearance: '= bore - journal', length: '= -(bore * 4) / -8' },
      },
      result: { outputs: {} },
    },
    clocking: {
      record: { role: 'cell', inputs: { outside: '60 mm', hole: '= holes.drill' } },
      result: { outputs: {} },
    },
    odd: { record: { role: 'cell', inputs: { clearance: '= SQRT(bore)' } }, result: { outputs: {} } },
  };
  const sheet = {
    idOf: (name: string) => (name in lines ? name : undefined),
    line: (id: string) => lines[id],
    state: { units: { length: 'mm' } },
  } as unknown as Sheet;
  const of = (cell: string, kind: string) => drawingValues(sheet, cell, library.kinds.get(kind)!);
  expect(of('oil', 'oil-flow').clearance).toBeCloseTo(0.0001, 12);
  expect(of('oil', 'oil-flow').length).toBeCloseTo(0.025, 12);
  expect(of('clocking', 'arc-clocking').hole).toBeCloseTo(0.003, 12);
  expect(of('odd', 'oil-flow').clearance).toBeUndefined();
});
