import type { Sheet } from '../state/sheet.ts';
import type { Stop } from './stops.ts';

/**
 * `First way: cut to`, `2nd way`, `Way B`: how the label of a line or of its section begins that is one of several ways
 * to the same end. A convention of labels, so that whoever writes a sheet can follow it; a line that gives it up is
 * asked for like any other, and nothing else depends on it.
 */
const WAY = /^(?:the )?(?:(first|1st)|(second|2nd)|(third|3rd)|(fourth|4th)) way\b|^way ([a-d1-4])\b/i;
const COUNTED = ['first', 'second', 'third', 'fourth'] as const;

/** `the second way`, `way B`. */
const wordOf = (text: string | undefined): string | undefined => {
  const [found, ...parts] = WAY.exec(text?.trim() ?? '') ?? [];
  if (found === undefined) return undefined;
  const at = parts.findIndex((part) => part !== undefined);
  return at < COUNTED.length ? `the ${COUNTED[at]} way` : `way ${parts[at]!.toUpperCase()}`;
};

/** The way each line belongs to, by its id; lines that every way needs are not in it. */
export const waysOf = (sheet: Pick<Sheet, 'state' | 'line'>): ReadonlyMap<string, string> => {
  const ways = new Map<string, string>();
  let section: string | undefined;
  for (const id of sheet.state.order) {
    const record = sheet.line(id)?.record;
    if (record?.role === 'section') section = wordOf(record.label);
    const way = wordOf(record?.label) ?? section;
    if (way) ways.set(id, way);
  }
  return new Set(ways.values()).size > 1 ? ways : new Map();
};

/** The way that is being gone: the one something was read of; none while nothing was, or more than one. */
export const wayTaken = (stops: readonly Stop[], ways: ReadonlyMap<string, string>): string | undefined => {
  const begun = new Set(
    stops.filter(({ entry }) => entry !== '').flatMap(({ cell }) => ways.get(cell) ?? []),
  );
  return begun.size === 1 ? [...begun][0] : undefined;
};
