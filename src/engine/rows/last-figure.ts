import { isNone } from '../../../shared/dimension.ts';
import { findUnit, type Unit } from '../../../shared/units/units.ts';
import type { Literal } from '../../language/syntax/syntax.ts';

/** Share of itself to which a size is known that was given by a drill or thread. */
const NO_FIGURES = 1e-4;

/** Steps that lengths are usually read to, in their unit. */
const USUAL: Readonly<Record<string, number>> = { in: 1e-4, thou: 0.1, mm: 1e-3 };

/** Finest division of a common steel rule, of an inch; common practice, no source. */
const RULE = 64;

/** A fraction is given to its own denominator; one of an inch is read off a rule, and is known to its division at least. */
function fractionStep({ text, unit }: Literal): number | undefined {
  const [, bottom, mark] = /\d\/(\d+)\s*([^\d\s/]+)?$/.exec(text) ?? [];
  const last =
    (mark === undefined ? undefined : findUnit(mark)) ?? (unit === undefined ? undefined : findUnit(unit));
  if (bottom === undefined || !last) return undefined;
  return last.factor / (last.symbol === 'in' ? Math.max(RULE, Number(bottom)) : Number(bottom));
}

/** Worth of one step of the last figure of a reading as written, SI. */
export function lastFigure(reading: Literal): number {
  const unit = reading.unit === undefined ? undefined : findUnit(reading.unit);
  // A bare 0 has no last figure: it was read as the unit usually is.
  if (unit && reading.value === 0 && !reading.digits) return unit.factor * (USUAL[unit.symbol] ?? 1);
  if (unit && reading.digits !== undefined) {
    const power = Number(/\d[eE]([+-]?\d+)/.exec(reading.text)?.[1] ?? 0);
    return unit.factor * 10 ** (power - reading.digits);
  }
  const fraction = fractionStep(reading);
  if (fraction !== undefined) return fraction;
  // 30 deg 15': the last figure is one of the last unit.
  const compound = /\d\s*[^\d\s/]+\s*\d+(?:\.(\d+))?\s*([^\d\s/]+)$/.exec(reading.text);
  const last = compound && smallerUnit(compound[2] as string, isNone(reading.dimension));
  return last ? last.factor * 10 ** -(compound[1]?.length ?? 0) : Math.abs(reading.value) * NO_FIGURES;
}

const smallerUnit = (mark: string, angle: boolean): Unit | undefined =>
  angle && /^(['′’]|min)/.test(mark)
    ? findUnit('arcmin')
    : angle && /^(["″”]|s)/.test(mark)
      ? findUnit('arcsec')
      : findUnit(mark);
