import { describe, expect, it } from 'vitest';
import { fitClasses, inchFit } from '../../../cells/tables/b41/b41.ts';
import { inchGrades, inchTolerance } from '../../../cells/tables/b41/hole-tolerances.ts';
import { rowsWhere, titleOf } from './reference.ts';

/** Thousandths of an inch, to a millionth of one. */
const thouOf = (metres: number): number => Math.round((metres / 0.0000254) * 1e6) / 1e6 + 0;
const fitAt = (nominalInches: number, name: string) => {
  const found = inchFit(nominalInches * 0.0254, name);
  if ('problem' in found) throw new Error(found.problem);
  return found;
};
/** A size inside the printed range, and its top end, which belongs to it. */
const sizesIn = (range: string): number[] => {
  const [over, to] = range.split('-').map(Number) as [number, number];
  return [(over + to) / 2, over + 0.0001, to];
};

/** `0.1/0.45 0.15/0.5`: one entry a step, its figures between strokes. */
const figures = (column: string): [number, number, number][] =>
  column.split(' ').map((entry) => entry.split('/').map(Number) as [number, number, number]);

describe('inch fits against print', () => {
  for (const row of rowsWhere(
    (each) => typeof each.inputs.range_in === 'string' && typeof each.inputs.class === 'string',
  ))
    it(titleOf(row), () => {
      const { class: name, range_in } = row.inputs as { class: string; range_in: string };
      for (const size of sizesIn(range_in)) {
        const { hole, shaft, clearance } = fitAt(size, name);
        if (Array.isArray(row.expected)) {
          expect([thouOf(clearance.min), thouOf(clearance.max)]).toEqual(row.expected);
          continue;
        }
        const printed = row.expected as {
          hole: number[];
          shaft: number[];
          clearance?: number[];
          interference?: number[];
        };
        expect([thouOf(hole.upper), thouOf(hole.lower)]).toEqual(printed.hole);
        expect([thouOf(shaft.upper), thouOf(shaft.lower)]).toEqual(printed.shaft);
        if (printed.clearance)
          expect([thouOf(clearance.min), thouOf(clearance.max)]).toEqual(printed.clearance);
        if (printed.interference)
          expect([thouOf(-clearance.max) + 0, thouOf(-clearance.min)]).toEqual(printed.interference);
      }
    });

  /** Columns of clearance or fit, printed beside the limits they follow from. Machinery's Handbook, 31st ed., seen. */
  const printedFits: Readonly<Record<string, string>> = {
    RC1: '0.1/0.45 0.15/0.5 0.2/0.6 0.25/0.75 0.3/0.95 0.4/1.1 0.4/1.2 0.5/1.5 0.6/1.8 0.6/2.0',
    RC2: '0.1/0.55 0.15/0.65 0.2/0.85 0.25/0.95 0.3/1.2 0.4/1.4 0.4/1.6 0.5/2.0 0.6/2.3 0.6/2.6',
    RC3: '0.3/0.95 0.4/1.2 0.5/1.5 0.6/1.7 0.8/2.1 1.0/2.6 1.2/3.1 1.4/3.7 1.6/4.2 2.0/5.0',
    RC4: '0.3/1.3 0.4/1.6 0.5/2.0 0.6/2.3 0.8/2.8 1.0/3.6 1.2/4.2 1.4/5.0 1.6/5.7 2.0/6.6',
    RC5: '0.6/1.6 0.8/2.0 1.0/2.5 1.2/2.9 1.6/3.6 2.0/4.6 2.5/5.5 3.0/6.6 3.5/7.6 4.0/8.6',
    RC6: '0.6/2.2 0.8/2.7 1.0/3.3 1.2/3.8 1.6/4.8 2.0/6.1 2.5/7.3 3.0/8.7',
    RC7: '1.0/2.6 1.2/3.1 1.6/3.9 2.0/4.6 2.5/5.7 3.0/7.1 4.0/8.8',
    RC8: '2.5/5.1 2.8/5.8 3.0/6.6 3.5/7.9',
    RC9: '4.0/8.1 4.5/9.0 5.0/10.7 6.0/12.8 7.0/15.5 8.0/18.0 9.0/20.5 10.0/24.0 12.0/28.0 15.0/34.0',
    LT1: '-0.12/0.52 -0.15/0.65 -0.2/0.8 -0.2/0.9 -0.25/1.05 -0.3/1.3 -0.3/1.5',
    LT2: '-0.2/0.8 -0.25/0.95 -0.3/1.2 -0.35/1.35 -0.4/1.6 -0.5/2.1 -0.6/2.4 -0.7/2.9 -0.8/3.3 -0.9/3.7',
    LT5: '-0.5/0.15 -0.6/0.2 -0.8/0.2 -0.9/0.2 -1.1/0.2 -1.3/0.3 -1.5/0.4 -1.9/0.4 -2.2/0.4 -2.6/0.4',
    LT6: '-0.65/0.15 -0.8/0.2 -1.0/0.2 -1.2/0.2 -1.4/0.2 -1.7/0.3 -2.0/0.4',
    LN1: '-0.45/0 -0.5/0 -0.65/0 -0.8/0 -1.0/0 -1.1/0 -1.3/-0.1 -1.6/-0.1 -1.9/-0.2 -2.2/-0.2',
    LN2: '-0.65/0 -0.8/0 -1.0/0 -1.1/0 -1.3/0 -1.6/0 -2.1/-0.2 -2.5/-0.2 -2.8/-0.2 -3.2/-0.2',
    LN3: '-0.75/-0.1 -0.9/-0.1 -1.2/-0.2 -1.4/-0.3 -1.7/-0.4 -2.0/-0.4 -2.3/-0.4 -2.9/-0.6 -3.5/-0.9 -4.2/-1.2',
  };
  for (const [name, column] of Object.entries(printedFits))
    it(`${name}: the printed column of fits follows from our limits [Machinery's Handbook, 31st ed., Tables 8a, 8b, 10, 12] seen`, () => {
      for (const [i, [min, max]] of figures(column).entries()) {
        const { clearance } = fitAt(inchGrades[i]!.to, name);
        expect([thouOf(clearance.min), thouOf(clearance.max)], `to ${inchGrades[i]!.to} in`).toEqual([
          min,
          max,
        ]);
      }
    });

  const printedForce: Readonly<Record<string, string>> = {
    FN1: '0.12/0.05/0.5 0.56/0.1/0.8 1.97/0.4/1.4 3.15/0.7/1.9 3.94/0.9/2.4 5.52/1.2/2.9 7.88/1.8/3.8 9.85/2.3/4.3',
    FN2: '0.12/0.2/0.85 0.71/0.5/1.6 1.58/0.8/2.4 3.94/1.4/3.7 5.52/1.9/4.5 6.3/2.4/5.0 7.09/2.9/5.5 8.86/3.2/6.2 9.85/4.2/7.2',
    FN3: '1.19/0.8/2.1 1.97/1.2/2.8 2.56/1.3/3.2 3.94/2.1/4.4 6.3/3.4/6.0 7.09/4.4/7.0 8.86/5.2/8.2 9.85/6.2/9.2',
    FN4: '0.12/0.3/0.95 1.19/1.0/2.3 3.94/3.6/5.9 6.3/5.4/8.0 7.09/6.4/9.0 7.88/7.2/10.2 8.86/8.2/11.2 9.85/10.2/13.2',
    FN5: '0.12/0.3/1.3 0.71/0.8/2.5 1.97/2.4/5.0 3.94/4.8/8.4 5.52/7.5/11.6 6.3/9.5/13.6 7.88/11.2/15.8 9.85/13.2/17.8',
  };
  for (const [name, column] of Object.entries(printedForce))
    it(`${name}: printed interference follows from our limits [Machinery's Handbook, 27th and 31st ed., Table 11] seen`, () => {
      for (const [to, min, max] of figures(column)) {
        const { clearance } = fitAt(to, name);
        expect([thouOf(-clearance.max), thouOf(-clearance.min)], `to ${to} in`).toEqual([min, max]);
      }
    });
});

describe('the table holds together', () => {
  /** Limits the standard rounded by hand, half an odd tolerance and the like. */
  const uneven = new Set(['RC9', 'LT1', 'LT2', 'LN1']);
  it('the shaft of every class takes the tolerance of its own grade', () => {
    let checked = 0;
    for (const { name, shaftGrade, rows } of fitClasses) {
      if (shaftGrade === undefined || uneven.has(name)) continue;
      for (const row of rows) {
        const limits = row.by.get(name);
        if (limits === undefined) continue;
        expect(Math.round((limits[0] - limits[1]) * 1e6) / 1e6, `${name} to ${row.to} in`).toBe(
          inchTolerance(row.to, shaftGrade),
        );
        checked += 1;
      }
    }
    expect(checked).toBeGreaterThan(250);
  });

  it('tolerances rise with grade and with size from one row to the next', () => {
    for (const [i, row] of inchGrades.entries()) {
      const values = [...row.tolerances.values()];
      expect([...values].sort((a, b) => a - b)).toEqual(values);
      if (i > 0)
        for (const [grade, value] of row.tolerances)
          expect(value).toBeGreaterThanOrEqual(inchGrades[i - 1]!.tolerances.get(grade)!);
    }
  });

  it('clearance classes always clear, interference classes never do, over every step', () => {
    for (const { name, rows } of fitClasses)
      for (const row of rows) {
        if (!row.by.has(name)) continue;
        const { clearance } = fitAt(row.to, name);
        if (/^(RC|LC)/.test(name)) expect(thouOf(clearance.min), name).toBeGreaterThanOrEqual(0);
        if (/^(LN|FN)/.test(name)) expect(thouOf(clearance.max), name).toBeLessThanOrEqual(0);
      }
  });
});

describe('what it says when it cannot', () => {
  it('names class or size and the way out', () => {
    expect((inchFit(0.0254, 'RC12') as { problem: string }).problem).toMatch(
      /no fit class "RC12".*RC1 to RC9/,
    );
    expect((inchFit(0.0254 * 12, 'RC4') as { problem: string }).problem).toMatch(/12 in is outside/);
    expect((inchFit(0, 'RC4') as { problem: string }).problem).toMatch(/outside/);
    expect((inchFit(0.0254 * 0.5, 'FN3') as { problem: string }).problem).toMatch(
      /over 0\.95 in.*FN2 or FN4/,
    );
    expect((inchFit(0.0254 * 0.2, 'LT3') as { problem: string }).problem).toMatch(/over 0\.24 in/);
  });

  it('reads the class however it is written', () => {
    expect(inchFit(0.0254, 'rc 4')).toEqual(inchFit(0.0254, 'RC4'));
  });
});
