import { sameDimension } from '../../../shared/dimension.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import type { Entry, Literal } from '../../language/syntax/syntax.ts';
import { remedy } from '../../language/values/reading.ts';
import { eachRef } from './expr.ts';

/** What a limit is for. */
export interface Limited {
  /** Name of the cell, where its value is what is judged. */
  name?: string | undefined;
  entry: Entry;
}

/** Reads well, and is no limit of this value: why, and what is probably meant. */
export const limitProblem = (limit: Entry, text: string, of: Limited | undefined): Problem | undefined =>
  twoLimits(limit, text) ?? (of && (ofItself(limit, of) ?? noSize(limit, text, of)));

/** 2.249..2.250 or 50 mm H7 as one limit: both of them, of which neither nor their middle is the one. */
function twoLimits(entry: Entry, text: string): Problem | undefined {
  const isTwo =
    entry.kind === 'range' ||
    entry.kind === 'fit' ||
    (entry.kind === 'value' && (entry.spread?.form === 'deviations' || entry.spread?.form === 'class'));
  return isTwo
    ? problem(
        'range',
        `${text.trim()} gives two limits, and one belongs here: write the lower and the upper each in its own field.`,
      )
    : undefined;
}

/** A value that is its own limit is always in. */
function ofItself(limit: Entry, { name }: Limited): Problem | undefined {
  if (limit.kind !== 'formula' || name === undefined) return undefined;
  let found = false;
  eachRef(limit.expr, (ref) => {
    if (ref.name === name && (ref.output === undefined || ref.output === 'value')) found = true;
  });
  return found
    ? problem(
        'range',
        `\`${name}\` is what is judged here, so a limit that hangs on it judges nothing: name what the limit hangs on instead.`,
      )
    : undefined;
}

/** 20 under, -.001 or +.001 in as a limit of 2.25 in: how far off the size may be, and no size. */
function noSize(limit: Entry, text: string, { entry }: Limited): Problem | undefined {
  const size = entry.kind === 'offset' ? undefined : (sizeOf(entry) ?? firstReading(entry));
  const value = sizeOf(limit);
  if (!size || !value || !(size.value > 0) || !sameDimension(size.dimension, value.dimension))
    return undefined;
  const isSigned = /^\s*[-+−–]/.test(text) && Math.abs(value.value) < size.value / 4;
  if (limit.kind !== 'offset' && !isSigned) return undefined;
  const off = value.text.replace(/^[-+−–]\s*/, '');
  const from =
    entry.kind === 'value' && !entry.spread ? `= ${size.text} ${value.value < 0 ? '-' : '+'} ${off}` : '';
  return problem(
    'range',
    `${text.trim()} is how far a size may be off, and a limit is the size itself${from ? `: is ${from} meant?` : ', or a formula such as = standard - 20 thou.'}`,
    from ? { choices: [remedy(from)] } : {},
  );
}

const firstReading = (entry: Entry): Literal | undefined =>
  entry.kind === 'readings' ? entry.stations.flat()[0] : undefined;
