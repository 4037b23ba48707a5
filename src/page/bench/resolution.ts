import { findUnit, toSI } from '../../../shared/units/units.ts';
import type { Sheet } from '../state/sheet.ts';

/** Figures behind the mark of a step: 4 for 0.0001, 3 for 0.0005 too, whose last figure is read as 0 or 5. */
const decimalsOfStep = (step: number): number => {
  for (let n = 0; n < 9; n += 1) {
    const scaled = step * 10 ** n;
    if (Math.abs(scaled - Math.round(scaled)) < 1e-6 * scaled) return n;
  }
  return 9;
};

/**
 * Figures behind the decimal mark that a gauge of the sheet shows in a unit, one more where its scale is halved by eye.
 * @param gauge name of the gauge's line
 * @returns nothing where the gauge, its resolution or the unit is not known
 */
export const resolutionOf = (sheet: Sheet, gauge: string | undefined, unit: string): number | undefined => {
  const id = gauge && sheet.idOf(gauge);
  const step = id ? sheet.line(id)?.result?.outputs.resolution?.planned?.value : undefined;
  const known = findUnit(unit);
  if (step === undefined || step <= 0 || !known) return undefined;
  return decimalsOfStep(step / toSI(1, known)) + 1;
};
