import { describe, expect, it } from 'vitest';
import { drillByName, drillNotAbove, drillNotBelow, drills } from '../../../cells/tables/drills.ts';
import { drillReference, rowById, rowsWhere, titleOf } from './reference.ts';

const inches = (name: string): number => {
  const drill = drillByName(name);
  if ('problem' in drill) throw new Error(drill.problem);
  return drill.diameter / 0.0254;
};

describe('drills against print', () => {
  const written: Readonly<Record<string, (size: string) => string>> = {
    number: (size) => `#${size}`,
    letter: (size) => size,
    fractional_64ths: (size) => size,
  };
  for (const [series, sizes] of Object.entries(drillReference))
    it(`the ${series} drills, all ${Object.keys(sizes).length} of them [ASME B94.11M-1993 Table 1; fractions k/64]`, () => {
      const write = written[series];
      if (write === undefined) throw new Error(`drills.json has a series ${series} no reading is known for`);
      for (const [size, diameter] of Object.entries(sizes))
        expect(inches(write(size)), size).toBeCloseTo(diameter, 10);
    });

  for (const id of ['R511', 'R512', 'R513'])
    it(titleOf(rowById(id)), () => {
      for (const [size, diameter] of Object.entries(rowById(id).expected as Record<string, number>))
        expect(inches(id === 'R511' ? `#${size}` : size), size).toBeCloseTo(diameter, 10);
    });

  for (const row of rowsWhere((each) => each.quantity.startsWith('drill size ')))
    it(titleOf(row), () => {
      expect(inches(row.quantity.replace('drill size ', ''))).toBeCloseTo(row.expected as number, 10);
    });

  it(titleOf(rowById('R522')), () => {
    const { limit } = rowById('R522').inputs as { limit: number };
    expect(rowById('R522').expected).toContain('Q (0.3320); 21/64');
    expect(drillNotAbove(limit * 0.0254)?.name).toBe('Q');
    expect(drillNotAbove((limit - 0.0001) * 0.0254)?.name).toBe('21/64');
    expect(drillNotBelow(limit * 0.0254)?.name).toBe('Q');
    expect(drillNotBelow((limit + 0.0001) * 0.0254)?.name).toBe('R');
  });
});

describe('the drill list', () => {
  it('reads what a shop writes', () => {
    expect(inches('No. 7')).toBeCloseTo(0.201, 10);
    expect(inches('F drill')).toBeCloseTo(0.257, 10);
    expect(inches('1-1/8')).toBeCloseTo(1.125, 10);
    expect(inches('2/4 in')).toBeCloseTo(0.5, 10);
    expect(inches('6,8 mm') * 25.4).toBeCloseTo(6.8, 10);
  });

  it('says what it does not know', () => {
    expect((drillByName('#98') as { problem: string }).problem).toMatch(/"#98" is no standard drill/);
    expect((drillByName('1/3') as { problem: string }).problem).toMatch(/no standard drill/);
    expect(drillNotAbove(0.00001)).toBeUndefined();
    expect(drillNotBelow(1)).toBeUndefined();
  });

  it('has each name once; numbers fall, letters rise; A is above #1, and E is 1/4', () => {
    expect(new Set(drills.map((drill) => drill.name)).size).toBe(drills.length);
    const of = (series: string): number[] =>
      drills.filter((drill) => drill.series === series).map((drill) => drill.diameter);
    expect(of('number')).toEqual([...of('number')].sort((a, b) => b - a));
    for (const series of ['letter', 'fraction', 'metric'])
      expect(of(series)).toEqual([...of(series)].sort((a, b) => a - b));
    expect(inches('A')).toBeGreaterThan(inches('#1'));
    expect(inches('E')).toBe(inches('1/4'));
  });

  it('no gap between neighbours of the inch series over 1/16 in exceeds 1/64 in to 1 3/4 in', () => {
    for (let size = 0.0625; size < 1.75; size += 0.003) {
      const above = drillNotBelow(size * 0.0254)!.diameter / 0.0254;
      expect(above - size, `at ${size}`).toBeLessThan(1 / 64 + 1e-9);
    }
  });
});
