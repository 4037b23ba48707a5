import { describe, expect, it } from 'vitest';
import { inside, MM, mean, outside, UM, workOut } from './shelf.ts';

/** Recomputed by hand from the sizes and the handbook formulas. */
describe('reground journal with split shells', () => {
  const name = 'reground-journal-split-shells.json';
  const sheet = workOut(name);
  const D = mean(58.509, 58.511, 58.51, 58.511) * MM;
  const bySizes = D - 2 * mean(2.364, 2.364, 2.364, 2.365) * MM;
  const interference = (2 * 38 * UM) / Math.PI;
  const shell = inside(D, bySizes, 0.29) / 207e9;
  const housing = outside(92 * MM, D, 0.211) / 100e9;

  it('grinds to the next undersize: 53.833 less 0.03 and 0.02 is 0.192 under, so 0.25', () => {
    expect(sheet.value('undersize', 'needed')).toBeCloseTo(0.192 * MM, 12);
    expect(sheet.value('journal')).toBeCloseTo(53.725 * MM, 12);
  });

  it('crush: twice 38 um over pi, by the give of both rings', () => {
    const pressure = interference / (D * (shell + housing));
    expect(sheet.value('shells', 'pressure') / pressure).toBeCloseTo(1, 3);
  });

  it('clearance: housing, and what it gives, less two walls less journal', () => {
    // Another way to the bore: the housing grows with its hoop strain, each wall thickens by nu times its own over E.
    const pressure = interference / (D * (shell + housing));
    const grown = pressure * D * housing;
    const wall = (D - bySizes) / 2;
    const thicker = (0.29 * pressure * D) / (2 * wall) / 207e9;
    const bore = D + grown - 2 * wall * (1 + thicker);
    expect(grown).toBeGreaterThan(7 * UM);
    expect(Math.abs(sheet.value('shell_bore') - bore)).toBeLessThan(0.1 * UM);
    expect(sheet.value('running', 'clearance')).toBeCloseTo(sheet.value('shell_bore') - 53.725 * MM, 12);
  });

  it('a deeper score takes the next undersize', () => {
    const worn = workOut(name, { journal_found: '53.746; 53.721 | 53.743; 53.716 mm' });
    expect(worn.value('journal')).toBeCloseTo(53.475 * MM, 12);
    expect(worn.state('running', 'clearance')).toBe('misses');
  });
});
