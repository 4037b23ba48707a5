import type { SyntaxNode } from '@lezer/common';
import { over, plus, ratioNumber, times } from '../../../shared/units/exact.ts';
import { unitRatio } from '../../../shared/units/unit.ts';
import type { Literal } from '../syntax/syntax.ts';
import { type Amount, readAmount, toLiteral } from '../values/amount.ts';
import { isNumberNode } from '../values/number.ts';
import { children, complain, type Reading, sliceOf, wanted } from '../values/reading.ts';
import { settleLiterals } from '../values/settle.ts';
import { readSpread, resolveSpread, unitOfSpread } from '../values/spread.ts';
import { decimalEcho } from './echo.ts';
import type { ReadForm } from './form.ts';
import { byStation, onlyMeasured } from './readings.ts';

/** set 1.7500 in, +14 div of .0001 in: each reading is the setting and so many divisions, summed exactly. */
export const readGaugeSetting = (
  r: Reading,
  node: SyntaxNode,
  within: SyntaxNode | undefined,
): ReadForm | undefined => {
  const want = wanted(r);
  const part = (name: string) => {
    const found = node.getChild(name);
    return found ? readAmount(r, children(found), want) : undefined;
  };
  const size = part('SetSize');
  const step = part('DivisionSize');
  const nodes = children(node);
  const firstDivision = nodes.findIndex((child) => child.name === 'Division');
  const read = byStation(
    r,
    nodes.slice(firstDivision).filter((child) => child.name !== 'DivisionSize'),
    (division) => readAmount(r, children(division).filter(isNumberNode), {}),
  );
  const typed = within && readSpread(r, within, want);
  const all = read.flat();
  if (!size || !step || all.some((division) => !division) || (within && !typed)) return undefined;
  if (!size.unit && step.unit && r.kind?.name === 'length' && step.unit.symbol !== r.context.units.length) {
    return complain(
      r,
      'ask',
      `The setting ${sliceOf(r, size)} has no unit, and the divisions are in ${step.unit.label}: write its unit behind it.`,
      size,
    );
  }
  const settled = settleLiterals(r, [size, step], unitOfSpread(typed));
  const [setting, division] = settled?.literals ?? [];
  const [sizeUnit, stepUnit] = settled?.units ?? [];
  if (!setting || !division || !sizeUnit || !stepUnit) return undefined;
  if (division.value <= 0)
    return complain(r, 'range', `A division is above zero; ${division.text} is not.`, division);
  const stepInSize = over(times(step.ratio, unitRatio(stepUnit)), unitRatio(sizeUnit));
  const literalAt = (count: Amount): Literal | undefined => {
    const ratio = plus(size.ratio, times(count.ratio, stepInSize));
    const made = toLiteral(r, { ...size, ratio, from: node.from, to: node.to, digits: undefined }, sizeUnit);
    return (
      made && {
        ...made,
        text: decimalEcho(made.value, sizeUnit),
        digits: Math.max(size.digits ?? 0, step.digits ?? 0),
      }
    );
  };
  const stations = read.map((station) => station.map((count) => (count ? literalAt(count) : undefined)));
  const whole = stations.map((station) => station.filter((literal) => literal !== undefined));
  const spread = typed && resolveSpread(r, typed, sizeUnit);
  if (whole.flat().length < all.length || (typed && !spread)) return undefined;
  const set = {
    size: setting,
    divisions: all.map((count) => ratioNumber(count!.ratio)),
    division,
  };
  const more = { set, ...(spread ? { spread } : {}) };
  const echo = whole.map((station) => station.map((literal) => literal.text).join('; ')).join(' | ');
  const [only] = whole.flat();
  if (all.length === 1 && only) return { entry: { kind: 'value', value: only, ...more }, echo };
  return onlyMeasured(r, node) ? { entry: { kind: 'readings', stations: whole, ...more }, echo } : undefined;
};
