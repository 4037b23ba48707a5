/**
 * A plain value in which every part that says the same as in the one before is that very object, so that whoever shows it
 * sees at a glance what changed. Changes `now`, which must be nobody else's.
 */
export const reuseUnchanged = <T>(now: T, before: unknown): T => reuse(now, before) as T;

function reuse(now: unknown, before: unknown): unknown {
  if (Object.is(now, before)) return now;
  if (!isRecord(now) || !isRecord(before) || Array.isArray(now) !== Array.isArray(before)) return now;
  const keys = Object.keys(now);
  let same = keys.length === Object.keys(before).length;
  for (const key of keys) {
    const kept = Object.hasOwn(before, key) ? reuse(now[key], before[key]) : now[key];
    if (kept !== now[key]) now[key] = kept;
    if (!Object.is(kept, before[key]) || !Object.hasOwn(before, key)) same = false;
  }
  return same ? before : now;
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;
