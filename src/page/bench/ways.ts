import type { Sheet } from '../state/sheet.ts';
import type { Stop } from './stops.ts';

/** `First way: cut to`, in the label of a line or of its section: one of several ways to the same end. */
const WAY = /^(first|second|third|fourth) way\b/i;

const wordOf = (text: string | undefined): string | undefined => WAY.exec(text ?? '')?.[0].toLowerCase();

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
