import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { dimensionLine, overEdge } from '../../src/page/kit/dimension-line.ts';

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
