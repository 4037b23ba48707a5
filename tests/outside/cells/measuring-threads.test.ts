import { describe, expect, test } from 'vitest';
import { reference } from '../tables/reference.ts';
import { one } from './sheet-of.ts';

interface Thread {
  id: string;
  grade: string;
  /** mm */
  major: number;
  pitch: number;
  pitchDiameter: number;
}

const threads: Thread[] = reference.flatMap((row) => {
  const inputs = row.inputs as { D?: number; tpi?: number; d?: number; P?: number };
  const expected = row.expected as { pitch_dia?: number; d2?: number };
  const { id, grade } = row;
  if (inputs.D && inputs.tpi && expected.pitch_dia)
    return [
      {
        id,
        grade,
        major: inputs.D * 25.4,
        pitch: 25.4 / inputs.tpi,
        pitchDiameter: expected.pitch_dia * 25.4,
      },
    ];
  if (inputs.d && inputs.P && expected.d2)
    return [{ id, grade, major: inputs.d, pitch: inputs.P, pitchDiameter: expected.d2 }];
  return [];
});

test('the reference file has inch and metric threads', () => {
  expect(threads.length).toBeGreaterThan(15);
});

describe('three wires against the textbook formula M = D + 3 W - 1.5155 / N (seen) and ASME B1.1, ISO 724 pitch diameters', () => {
  test.each(threads)('$id ($grade)', ({ major, pitch, pitchDiameter }) => {
    const wire = 0.6 * pitch;
    const textbook = major + 3 * wire - 1.5155 * pitch;
    const cut = one('wires-to-cut-to', {
      pitch_diameter: `${pitchDiameter} mm`,
      wire: `${wire} mm`,
      pitch: `${pitch} mm`,
    });
    // Pitch diameters are printed to half a ten-thousandth of an inch or half a micrometre.
    expect(Math.abs(cut('over_wires', 'mm') - textbook)).toBeLessThan(0.0016);
    const read = one('three-wire', {
      over_wires: `${textbook} mm`,
      wire: `${wire} mm`,
      pitch: `${pitch} mm`,
    });
    expect(Math.abs(read('pitch_diameter', 'mm') - pitchDiameter)).toBeLessThan(0.0016);
    expect(read('best_wire', 'mm')).toBeCloseTo(0.57735 * pitch, 4);
  });
});

test('7/16-14 with 0.045 in wires measures 0.464 in (seen: model engineers’ society page)', () => {
  const cut = one('wires-to-cut-to', {
    pitch_diameter: '= 0.4375 in - 0.649519 in / 14',
    wire: '0.045 in',
    pitch: '= 1 in / 14',
  });
  expect(cut('over_wires', 'in')).toBeCloseTo(0.464, 3);
});

test('any angle: the wire the cell calls best touches the flanks at the pitch line (recomputed)', () => {
  for (const angle of [29, 30, 47.5, 55, 60]) {
    const half = (angle / 2) * (Math.PI / 180);
    const it = one('three-wire', {
      over_wires: '30 mm',
      wire: '1.2 mm',
      pitch: '2 mm',
      thread_angle: `${angle} deg`,
    });
    // At the pitch line a groove is half a pitch wide; a tangent circle there has radius (P / 4) / cos(half).
    expect(it('best_wire', 'mm')).toBeCloseTo(2 * (0.5 / Math.cos(half)), 9);
    // With the best wire, wires add: centre of the circle above the pitch line is (P / 4) tan(half).
    const best = it('best_wire', 'mm');
    const exact = one('three-wire', {
      over_wires: '30 mm',
      wire: `${best} mm`,
      pitch: '2 mm',
      thread_angle: `${angle} deg`,
    });
    expect(exact('wires_add', 'mm')).toBeCloseTo(2 * (0.5 * Math.tan(half)) + best, 9);
  }
});
