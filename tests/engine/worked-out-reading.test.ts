import { describe, expect, it } from 'vitest';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { inches, ofKind, plain } from './closed-form.ts';

/** A proof rests on a measurement (JCGM 106:2012, 7.2): a calculation where one is wanted is none by itself. */
const limits = { lower: '2.249 in', upper: '2.251 in' };
const micrometer = ofKind('gauge', 'mike', { gauge: 'micrometer-2-3-in' });

const judged = (cells: CellRecord[], name: string) => {
  const sheet = inches([micrometer, ...cells]);
  return {
    state: sheet.output(name).check.asNew.state,
    said: (sheet.byName(name)?.remarks ?? []).map(({ message }) => message).join('\n'),
    asked: (sheet.byName(name)?.slips ?? []).map(({ key }) => key.split(':')[0]),
  };
};

describe('a formula where a reading is wanted', () => {
  it('proves nothing by itself, and says what to do', () => {
    const { state, said } = judged([plain('bore', 'measured', '= 2.25 in', { limits })], 'bore');
    expect(state).toBe('holds');
    expect(said).toMatch(/calculation and no reading, so it proves nothing: type the readings/);
  });

  it('says that the gauge beside it is not counted', () => {
    const own = plain('bore', 'measured', '= 2.25 in', { limits, gauge: 'mike' });
    expect(judged([own], 'bore').said).toContain('the doubt of `mike` is not counted');
  });

  it('proves no cut size either', () => {
    const bush = plain('bush', 'chosen', '2.25 in', {
      tolerance: '± .0005 in',
      limits,
      measured: { entry: '= 2.25 in' },
    });
    expect(judged([bush], 'bush').state).toBe('holds');
  });

  it('makes no part of what takes it in, whatever else was read', () => {
    const wire = plain('wire', 'given', '.03 in', { basis: 'equipment' });
    const read = plain('over', 'measured', '2.5000 in', { gauge: 'mike' });
    const next = plain('wall', 'worked', '= over - bore', { limits: { lower: '0 in' } });
    for (const entry of ['= 2.25 in', '= wire', '= 75 * wire', '= wire + 0 * over']) {
      const bore = plain('bore', 'measured', entry);
      expect([entry, judged([wire, read, bore, next], 'wall').state]).toEqual([entry, 'holds']);
    }
    const pins = plain('bore', 'measured', '= over - .25 in');
    // What was read goes in once and out again: the wall is the 0.25 in that was typed, and nobody read it.
    expect(judged([read, pins, next], 'wall').state).toBe('holds');
    const both = plain('both', 'worked', '= over + bore', { limits: { lower: '0 in' } });
    expect(judged([read, pins, both], 'both').state).toMatch(/^proven/);
  });

  it.each([['#7'], ['F drill'], ['1/4-20 UNC']])('%s is what a part is called, and no reading', (entry) => {
    const own = plain('hole', 'measured', entry, {
      gauge: 'mike',
      limits: { lower: '.1 in', upper: '.5 in' },
    });
    const { state, said } = judged([own], 'hole');
    expect(state).toBe('holds');
    expect(said).toContain(`\`${entry}\` is what the part is called and no reading`);
  });

  it('proves what hangs on readings, and what states its own doubt', () => {
    const over = [
      plain('over_pins', 'measured', '2.5000 in', { gauge: 'mike' }),
      plain('bore', 'measured', '= over_pins - .25 in', { limits }),
    ];
    expect(judged(over, 'bore')).toMatchObject({ state: 'proven in limits', said: '' });
    const stated = plain('bore', 'measured', '= 4.5 in / 2 ± .0002 in', { limits });
    expect(judged([stated], 'bore').state).toBe('proven in limits');
  });
});

describe('a limit that lies from its value as millimetres lie from inches', () => {
  const judgedBy = (upper: string, lower?: string) =>
    judged([plain('bore', 'given', '2.25 in', { limits: { upper, ...(lower ? { lower } : {}) } })], 'bore');

  it('is asked about, of the entry where two limits say how large it is', () => {
    // One limit alone says on which side of it a size lies: nothing tells which of the two is wrong.
    for (const upper of ['57.2', '.0886']) {
      const { said, asked } = judgedBy(upper);
      expect(said).toContain('apart by about 25.4 times');
      expect(asked).toEqual([]);
    }
    const between = judgedBy('.0890', '.0880');
    expect(between.said).toBe('');
    expect(between.asked).toEqual(['other-unit']);
  });

  it('is left alone elsewhere', () => {
    expect(judgedBy('2.26')).toMatchObject({ said: '', asked: [] });
    expect(judgedBy('40')).toMatchObject({ said: '', asked: [] });
  });
});
