import { describe, expect, it, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { inches, ofKind, plain } from '../closed-form.ts';
import { sheetOf } from '../random-sheet.ts';

/** What a micrometer reaches stands on its frame; of the other kinds common practice, no source. */
const micrometer = ofKind('gauge', 'mic_3', { gauge: 'micrometer-2-3-in' });
const boreGauge = ofKind('gauge', 'bore_gauge', { gauge: 'dial-bore-gauge-in', set_in: 'mic_3' });
const indicator = ofKind('gauge', 'indicator', { gauge: 'test-indicator-tenth' });
const GAUGES = [micrometer, boreGauge, indicator];

const asked = (...cells: CellRecord[]) =>
  inches([...GAUGES, ...cells]).cells.flatMap(({ slips }) =>
    slips.filter(({ key }) => key.startsWith('gauge:')),
  );
const read = (entry: string, gauge: string) => plain('seat', 'measured', entry, { gauge });

describe('a reading is held against the range of its gauge', () => {
  test.each([
    ['7.25 in', 'mic_3'],
    ['3.1490; 3.1500 in', 'mic_3'],
    ['1.9 in', 'mic_3'],
    ['57.15 in', 'bore_gauge'],
    ['2.2500 in', 'indicator'],
    ['set 2.2500 in, +14 div of .001 in', 'indicator'],
  ])('%s is asked about beside %s', (entry, gauge) => {
    expect(asked(read(entry, gauge)).map(({ key, field }) => [key, field])).toEqual([
      ['gauge:entry', 'entry'],
    ]);
  });

  test.each([
    ['2.2500 in', 'mic_3'],
    ['3.0004 in', 'mic_3'],
    ['2.2500 in', 'bore_gauge'],
    ['.0004 in', 'indicator'],
    ['set 2.2500 in, +14 div of .0001 in', 'indicator'],
    ['', 'mic_3'],
    ['= 4 in + 3 in', 'mic_3'],
  ])('%s is not beside %s', (entry, gauge) => {
    expect(asked(read(entry, gauge))).toEqual([]);
  });

  it('and of the one it is set in', () => {
    expect(asked(read('3.7 in', 'bore_gauge'))[0]?.message).toBe(
      '`mic_3`, in which `bore_gauge` is set, reaches from 2 in to 3 in, and 3.7000 in lies beyond. Was it read with another gauge?',
    );
  });

  it('as measured, of an output too, and in a cell that takes a gauge itself', () => {
    const measured = { entry: '7.25 in', gauge: 'mic_3' };
    const bush = plain('bush', 'chosen', '7.25 in', { measured });
    const press = { ...ofKind('bush-close-in', 'press', {}), outputs: { close_in: { measured } } };
    const set = ofKind('gauge-setting', 'set', {
      set_to: '7 in',
      divisions: '14',
      division: '.0001 in',
      gauge: 'bore_gauge',
    });
    const travel = { ...set, id: 'travel', name: 'travel', inputs: { ...set.inputs, gauge: 'indicator' } };
    const depths = ofKind('depth-by-difference', 'depths', {
      to_face: '1.25 in',
      to_part: '1.2 in',
      gauge: 'mic_3',
    });
    expect(asked(bush, press, set, travel, depths).map(({ field }) => field)).toEqual([
      'measured.entry',
      'outputs.close_in.measured.entry',
      'inputs.gauge',
      'inputs.gauge',
    ]);
  });
});

it('the range as entered goes before the usual one, and a change of the gauge asks again', () => {
  const engine = new Engine(library);
  const seat = read('7.25 in', 'bore_gauge');
  const questions = (cells: CellRecord[]) =>
    engine.apply({ changed: cells }).cells.find(({ id }) => id === seat.id)?.slips.length;
  const of = (gauge: CellRecord, inputs: Record<string, string>): CellRecord => ({
    ...gauge,
    inputs: { ...gauge.inputs, ...inputs },
  });
  engine.load({ ...sheetOf([micrometer, boreGauge, seat]), units: { length: 'in' } });
  expect(questions([of(boreGauge, { measures_to: '12 in' })])).toBe(1);
  expect(questions([of(micrometer, { measures_from: '7 in', measures_to: '8 in' })])).toBe(0);
  expect(questions([of(micrometer, { gauge: 'micrometer-3-4-in' })])).toBe(1);
  engine.destroy();
});

it('is not asked of a bare figure whose unit is asked for', () => {
  const sheet = inches([
    ...GAUGES,
    plain('seat', 'measured', '19.0; 19.0', {
      gauge: 'mic_3',
      display: 'thou',
      limits: { upper: '24 thou' },
    }),
  ]);
  expect(sheet.output('seat').problem?.kind).toBe('ask');
  expect(sheet.byName('seat')?.slips).toEqual([]);
});
