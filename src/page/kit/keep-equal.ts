import { type Accessor, createMemo } from 'solid-js';

const isObject = (x: unknown): x is Record<string, unknown> => typeof x === 'object' && x !== null;

/**
 * A new value of plain objects and lists with every part that equals the old one's taken from there, so that who hangs
 * on such a part is not asked again. Changes `now` in place, which must be nobody else's; `before` stays as it is.
 * @returns `before` itself where nothing differs.
 */
export const keepEqual = <T>(before: T | undefined, now: T): T => {
  if (Object.is(before, now)) return now;
  if (!isObject(before) || !isObject(now) || Array.isArray(before) !== Array.isArray(now)) return now;
  let same = true;
  let count = 0;
  for (const key in now) {
    count++;
    const part = now[key];
    const kept = keepEqual(before[key], part);
    if (kept !== part) (now as Record<string, unknown>)[key] = kept;
    if (!Object.is(kept, before[key]) || (part === undefined && !(key in before))) same = false;
  }
  if (!same) return now;
  for (const _ in before) count--;
  return count === 0 ? before : now;
};

/**
 * A memo that stays the same while it says the same: each answer of the engine makes records anew, and a list that is open,
 * or a place that is pressed, must not change under who chooses from it.
 */
export const createKept = <T>(make: () => T, first: T): Accessor<T> =>
  createMemo<T>((before) => keepEqual(before, make()), first);
