import { describe, expect, it } from 'vitest';
import type { EngineFunction } from '../../src/engine/network/functions.ts';
import { DIVISION, Grid, PROBLEM_CALL, PROBLEM_MESSAGE } from '../../src/engine/network/grid.ts';

const functions: EngineFunction[] = [
  {
    name: 'TEST_SQRT',
    args: { min: 1, max: 1 },
    compute: (x) => ((x as number) < 0 ? { message: 'root of a negative' } : Math.sqrt(x as number)),
  },
  { name: 'TEST_MAX', args: { min: 1, max: Infinity }, compute: (...xs) => Math.max(...(xs as number[])) },
  {
    name: 'TEST_THROWS',
    args: { min: 1, max: 1 },
    compute: () => {
      throw new Error('a fault of ours');
    },
  },
  { name: 'TEST_FAIL', args: { min: 1, max: 1 }, compute: (text) => ({ message: String(text) }) },
];

describe('the grid', () => {
  it('computes by our own functions and tells which rows moved', () => {
    const grid = new Grid(functions);
    grid.write(0, 2.25);
    grid.write(1, '=FW_TEST_SQRT($A1)+1');
    grid.write(2, '=FW_TEST_MAX($A1,$A2,7e-1)');
    expect([...grid.settle()].sort()).toEqual([0, 1, 2]);
    expect(grid.value(2, 0)).toBe(2.5);
    grid.write(0, 1);
    expect([...grid.settle()].sort()).toEqual([0, 1, 2]);
    expect(grid.value(2, 0)).toBe(2);
    grid.destroy();
  });

  it('carries an error down with the row where it began', () => {
    const grid = new Grid(functions);
    grid.write(0, PROBLEM_CALL);
    grid.write(1, '=$A1+1');
    grid.write(2, '=FW_TEST_SQRT($A4)');
    grid.write(3, -1);
    grid.write(4, '=$A3*2');
    grid.write(5, '=1/$A7');
    grid.write(6, 0);
    grid.write(7, '=$A6+1');
    grid.write(8, '=FW_TEST_FAIL("inner above outer")');
    grid.settle();
    expect(grid.value(1, 0)).toEqual({ root: 0, message: PROBLEM_MESSAGE });
    expect(grid.value(4, 0)).toEqual({ root: 2, message: 'root of a negative' });
    expect(grid.value(7, 0)).toEqual({ root: 5, message: DIVISION });
    expect(grid.value(8, 0)).toEqual({ root: 8, message: 'inner above outer' });
    grid.destroy();
  });

  it('lives on when a function throws', () => {
    const grid = new Grid(functions);
    grid.write(0, '=FW_TEST_THROWS(1)');
    grid.write(1, '=2*3');
    grid.settle();
    expect(grid.value(0, 0)).toMatchObject({ root: 0 });
    expect(grid.value(1, 0)).toBe(6);
    grid.destroy();
  });
});
