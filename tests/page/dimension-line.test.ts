import { expect, test } from 'vitest';
import { dimensionLine } from '../../src/page/kit/dimension-line.ts';

const shape = (x1: number, y1: number, x2: number, y2: number, offset: number) => ({
  kind: 'dimension' as const,
  x1,
  y1,
  x2,
  y2,
  offset,
  of: 'bore',
});

test('figures stand above a level line and are read from the right beside an upright one (ISO 129-1)', () => {
  const level = dimensionLine(shape(0, 0, 10, 0, 3), 1);
  expect(level.text.angle).toBeCloseTo(0);
  expect(level.text.y).toBeLessThan(level.y1);
  for (const upright of [dimensionLine(shape(0, 0, 0, 10, 2), 1), dimensionLine(shape(0, 10, 0, 0, 2), 1)]) {
    expect(upright.text.angle).toBeCloseTo(-90);
    expect(upright.text.x).toBeLessThan(upright.x1);
  }
});

test('extension lines run from the points past the dimension line, and are left out where it lies on the points', () => {
  const line = dimensionLine(shape(0, 0, 10, 0, -3), 1);
  expect(line.y1).toBeCloseTo(3);
  expect(line.extensions[0]![3]).toBeGreaterThan(3);
  expect(dimensionLine(shape(0, 0, 10, 0, 0), 1).extensions).toEqual([]);
});

test('two points in one place are drawn without a number that is none', () => {
  const line = dimensionLine(shape(1, 1, 1, 1, 2), 1);
  expect(line.arrows.join()).not.toContain('NaN');
});
