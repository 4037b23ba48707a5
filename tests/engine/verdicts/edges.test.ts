import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord, DecisionRule } from '../../../shared/sheet/format.ts';
import { computeSheet } from '../../../src/engine/compute.ts';

type Line = Pick<CellRecord, 'role' | 'entry'> & Partial<CellRecord>;

const judged = (rule: DecisionRule, lines: Record<string, Line>) => {
  const cells = Object.entries(lines).map(([id, line]): CellRecord => ({ id, name: id, ...line }));
  const results = computeSheet(
    {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'edges' },
      units: { length: 'mm' },
      rule,
      cells,
    },
    library,
  );
  const output = results.byName('y')?.outputs.value;
  if (!output) throw new Error('no line y');
  return output.check;
};

// Student's t of one degree of freedom beyond 6.314 scale factors: 5 % (any table of t; JCGM 100:2008, table G.2, is two-sided).
describe('few readings', () => {
  it.each(['iso14253-2013', 'iso14253-2017'] as const)(
    'of a force are judged by their mean and its scatter, and not by each of them, by %s',
    (rule) => {
      const readings: Line = { role: 'measured', quantity: 'force', entry: '130.530 N, 131.002 N ± 0.001 N' };
      const limits = { lower: '130.4 N', upper: '131.1 N' };
      expect(judged(rule, { y: { ...readings, limits } }).asNew.state).toBe('not proven');
      const sum: Line = { role: 'worked', quantity: 'force', entry: '= x + 1 N' };
      expect(
        judged(rule, { x: readings, y: { ...sum, limits: { lower: '131.4 N', upper: '132.1 N' } } }).asNew
          .state,
      ).not.toMatch(/holds|proven in/);
    },
  );

  it('reach far: a step at seven scale factors from their mean is not taken for none', () => {
    // Mean 100 N, scale 0.1 N; beyond 100.5 N lies 6.3 % of Student's t with one degree of freedom.
    const x: Line = { role: 'measured', quantity: 'force', entry: '99.9 N, 100.1 N ± 0.001 N' };
    const y: Line = {
      role: 'worked',
      quantity: 'force',
      entry: '= IF(x > 100.5 N; x + 5 N; x)',
      limits: { upper: '102 N' },
    };
    const check = judged('iso14253-2013', { x, y });
    expect(check.method).toBe('draws');
    expect(check.asNew.state).not.toMatch(/holds|proven in/);
  });
});

describe('what rounding alone sets apart', () => {
  const length = (role: CellRecord['role'], entry: string): Line => ({ role, entry, quantity: 'length' });

  it.each(['<=', '>='])('is equal behind a size chosen by a formula: %s', (op) => {
    const a = length('chosen', '= 3000.02 mm - 3000 mm');
    const y = length('worked', `= IF(a ${op} 0.02 mm; 1 mm; 2 mm)`);
    expect(judged('worst-case', { a, y: { ...y, limits: { upper: '1.5 mm' } } }).asNew.state).toBe('holds');
  });

  it('has no sign', () => {
    const a = length('worked', '= 3000.01 mm - 3000 mm');
    const y = length('worked', '= SIGN(a - 0.01 mm) * 1 mm');
    const limits = { lower: '-0.5 mm', upper: '0.5 mm' };
    expect(judged('worst-case', { a, y: { ...y, limits } }).asNew.state).toBe('holds');
  });

  it.each(['worst-case', 'iso14253-2013', 'iso14253-2017', 'simple'] as const)(
    'stands on its limit, however small it is, by %s',
    (rule) => {
      const a = length('given', '3000.01 mm');
      const d = length('worked', '= a - 3000 mm');
      for (const [entry, limit] of [
        ['= d', '0.01 mm'],
        ['= d - 0.01 mm', '0 mm'],
        ['= 0.01 mm - d', '0 mm'],
        ['= (d - 0.01 mm) * 3', '0 mm'],
      ] as const)
        for (const which of ['lower', 'upper']) {
          const y = { ...length('worked', entry), limits: { [which]: limit } };
          expect(judged(rule, { a, d, y }).asNew.state, `${entry} ${which}`).toMatch(/^holds/);
        }
    },
  );
});

// ISO 286-2, H7 and g6 over 30 up to 50 mm: 0 to 25 and -9 to -25 micrometres; over 50 up to 80 mm: 0 to 30 and -10 to -29 (published tables).
it('a fit by classes is as certain as its classes, though its nominal size has a spread across a step of the tables', () => {
  const results = computeSheet(
    {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'edges' },
      units: { length: 'mm' },
      rule: 'worst-case',
      cells: [
        { id: 'd', name: 'd', role: 'given', quantity: 'length', entry: '49 mm ± 2 mm' },
        {
          id: 'y',
          name: 'y',
          role: 'cell',
          kind: 'iso-fit',
          inputs: { nominal: 'd', hole_class: 'H7', shaft_class: 'g6' },
        },
      ],
    },
    library,
  );
  const of = (name: string): number[] => {
    const figure = results.byName('y')?.outputs[name]?.planned;
    expect(figure?.atMost ?? false).toBe(false);
    return [figure?.low ?? Number.NaN, figure?.high ?? Number.NaN].map((x) => Math.round(x * 1e9) / 1e3);
  };
  expect(of('least_clearance')).toEqual([9, 10]);
  expect(of('greatest_clearance')).toEqual([50, 59]);
});
