import { describe, expect, it } from 'vitest';
import type { KeySection, ParallelKey, WoodruffKey } from '../../../cells/tables/keys.ts';
import { inchKey, inchKeyDepths, parallelKey, woodruffKey } from '../../../cells/tables/keys.ts';
import { turnedBushFits, wrappedBushFits, wrappedBushOutside } from '../../../cells/tables/wrapped-bushes.ts';
import { rowById, rowsWhere, titleOf } from './reference.ts';

const inch = (x: number): number => x * 0.0254;
const known = <T extends object>(found: T | { problem: string }): T => {
  if ('problem' in found) throw new Error(found.problem);
  return found;
};
const problemOf = (found: object): string => (found as { problem: string }).problem;
/** `1 3/8-1 3/4`, `8-10`: ends of a range as numbers. */
const ends = (range: string): [number, number] =>
  range.split('-').map((end) =>
    end.split(' ').reduce(
      (sum, part) =>
        sum +
        part
          .split('/')
          .map(Number)
          .reduce((a, b) => a / b),
      0,
    ),
  ) as [number, number];

describe('keys against print', () => {
  for (const row of rowsWhere((each) => typeof each.inputs.shaft_range_in === 'string'))
    it(titleOf(row), () => {
      const [over, to] = ends(String(row.inputs.shaft_range_in));
      for (const shaft of [over + 1e-4, (over + to) / 2, to]) {
        const key = known<KeySection>(inchKey(inch(shaft)));
        expect(key.width / 0.0254).toBeCloseTo(row.expected as number, 9);
        expect(key.height).toBe(key.width);
      }
    });

  for (const row of rowsWhere((each) => each.quantity.startsWith('S and T for square key')))
    it(titleOf(row), () => {
      const { D, W, H } = row.inputs as { D: number; W: number; H: number };
      expect(known<KeySection>(inchKey(inch(D))).width / 0.0254).toBeCloseTo(W, 9);
      const ours = known(inchKeyDepths(inch(D), { width: inch(W), height: inch(H) }));
      const printed = row.expected as { S: number; T_parallel: number; T_taper: number };
      expect(Math.abs(ours.S / 0.0254 - printed.S)).toBeLessThan(0.001);
      expect(Math.abs(ours.T / 0.0254 - printed.T_parallel)).toBeLessThan(0.001);
      expect(Math.abs(ours.taper / 0.0254 - printed.T_taper)).toBeLessThan(0.001);
    });

  it(titleOf(rowById('R538')), () => {
    // T stands one key height and 0.005 in above S; the taper figure 0.025 in under T.
    const ours = known(inchKeyDepths(inch(2), { width: inch(0.5), height: inch(0.375) }));
    expect((ours.T - ours.S) / 0.0254).toBeCloseTo(0.38, 9);
    expect((ours.T - ours.taper) / 0.0254).toBeCloseTo(0.025, 9);
    // By hand: the key's side, half its height sunk below where the seat's edge meets the round. For D 2, W 1/2 the edge
    // lies sqrt(1 - 1/16) from the axis, so S = 1 + sqrt(15)/4 - 3/16.
    expect(ours.S / 0.0254).toBeCloseTo(1 + Math.sqrt(15) / 4 - 3 / 16, 9);
  });

  for (const row of rowsWhere((each) => typeof each.inputs.shaft_range_mm === 'string'))
    it(titleOf(row), () => {
      const [over, to] = ends(String(row.inputs.shaft_range_mm));
      const printed = row.expected as { b: number; h: number; t1_shaft: number; t2_hub: number };
      for (const shaft of [over + 1e-3, to]) {
        const key = known<ParallelKey>(parallelKey(shaft / 1000));
        expect(
          [key.width, key.height, key.shaftDepth, key.hubDepth].map((x) => Math.round(x * 1e6) / 1e3),
        ).toEqual([printed.b, printed.h, printed.t1_shaft, printed.t2_hub]);
      }
    });

  it('Woodruff 404, 606, 808: seat 0.1355, 0.2143, 0.3080 in deep in the shaft [Shigley 9e Table 7-7] seen', () => {
    for (const [number, depth] of [
      ['404', 0.1355],
      ['606', 0.2143],
      ['808', 0.308],
    ] as const)
      expect(Math.abs(known<WoodruffKey>(woodruffKey(number)).shaftDepth / 0.0254 - depth)).toBeLessThan(
        0.6e-4,
      );
    expect(known<WoodruffKey>(woodruffKey('No. 1012'))).toMatchObject({
      width: inch(10 / 32),
      disc: inch(1.5),
    });
    expect(known<WoodruffKey>(woodruffKey('202.5')).disc).toBeCloseTo(inch(2.5 / 8), 12);
  });
});

describe('keys hold together', () => {
  it('key height lies between the two depths and a clearance over it, at every metric size', () => {
    for (let shaft = 7; shaft <= 500; shaft += 1) {
      const { height, shaftDepth, hubDepth, width } = known<ParallelKey>(parallelKey(shaft / 1000));
      const clearance = (shaftDepth + hubDepth - height) * 1000;
      expect(clearance, `${shaft} mm`).toBeGreaterThanOrEqual(0.2 - 1e-9);
      expect(clearance, `${shaft} mm`).toBeLessThanOrEqual(0.5 + 1e-9);
      expect(width * 1000, `${shaft} mm`).toBeLessThan(shaft / 2);
    }
  });

  it('says when there is no key', () => {
    expect(problemOf(inchKey(inch(0.25)))).toMatch(/0\.25 in.*Woodruff/);
    expect(problemOf(inchKey(inch(0.4), 'rectangular'))).toMatch(/take the square key, 0\.09375 in/);
    expect(problemOf(parallelKey(0.6))).toMatch(/600 mm/);
    expect(problemOf(woodruffKey('999'))).toMatch(/no Woodruff number/);
    expect(problemOf(inchKeyDepths(inch(0.25), { width: inch(0.5), height: inch(0.5) }))).toMatch(
      /wider than the shaft/,
    );
  });
});

describe('bushes against print', () => {
  for (const row of rowsWhere((each) => typeof each.inputs.OD_range_mm === 'string'))
    it(titleOf(row), () => {
      const [over, to] = ends(String(row.inputs.OD_range_mm));
      for (const outside of [over + 1e-3, to]) {
        const { upper, lower } = known(wrappedBushOutside(outside / 1000));
        expect({ upper: Math.round(upper * 1e9) / 1e3, lower: Math.round(lower * 1e9) / 1e3 }).toEqual(
          row.expected,
        );
      }
    });

  it(titleOf(rowById('R583')), () => {
    const printed = rowById('R583').expected as { housing: string; shaft: string[] };
    expect(wrappedBushFits.housing).toBe(printed.housing);
    expect(wrappedBushFits.shafts).toEqual(printed.shaft);
    expect(problemOf(wrappedBushOutside(0.25))).toMatch(/250 mm/);
  });

  it(titleOf(rowById('R577')), () => {
    const printed = rowById('R577').expected as {
      d1: string;
      d2: string;
      housing: string;
      d1_after: string;
      shaft: string;
    };
    expect(turnedBushFits.boreBefore).toBe(printed.d1);
    expect(`${turnedBushFits.outside(0.12)} (${turnedBushFits.outside(0.121)} above 120 mm)`).toBe(
      printed.d2,
    );
    expect(turnedBushFits.housing).toBe(printed.housing);
    expect(printed.d1_after).toContain(turnedBushFits.boreFitted);
    expect(turnedBushFits.shafts.join(' or ')).toBe(printed.shaft);
  });
});
