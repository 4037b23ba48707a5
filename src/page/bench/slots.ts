/** One place to put the gauge: how far along, and which way round. Counted from 0. */
export interface Slot {
  place: number;
  direction: number;
}

/** Readings wanted at each place along the length. */
export type Plan = readonly number[];

/** What is to be read: as many as the plan asks for, and whatever has been read beyond it. */
export const slotsOf = (plan: Plan, places: ReadonlyArray<readonly string[]>): Slot[] => {
  const along = Math.max(plan.length, places.length, 1);
  return Array.from({ length: along }, (_, place) => {
    const round = Math.max(plan[place] ?? 0, places[place]?.length ?? 0, 1);
    return Array.from({ length: round }, (_, direction) => ({ place, direction }));
  }).flat();
};

export const readingAt = (places: ReadonlyArray<readonly string[]>, slot: Slot): string =>
  places[slot.place]?.[slot.direction] ?? '';

/** The slot to read next: the one behind the last that was read. One left out, such as over a keyway, stays out. */
export const nextSlot = (
  slots: readonly Slot[],
  places: ReadonlyArray<readonly string[]>,
): Slot | undefined => slots[slots.findLastIndex((slot) => readingAt(places, slot) !== '') + 1];

/** One more reading at a place, or the first one of a further place along. */
export const further = (
  places: ReadonlyArray<readonly string[]>,
  from: Slot,
  way: 'round' | 'along',
): Slot =>
  way === 'round'
    ? { place: from.place, direction: Math.max(places[from.place]?.length ?? 0, 1) }
    : { place: Math.max(places.length, from.place + 1), direction: 0 };

/** Places with one reading put in; what lies between and is not read yet stays blank. */
export const withReading = (
  places: ReadonlyArray<readonly string[]>,
  slot: Slot,
  text: string,
): string[][] => {
  const next = places.map((place) => [...place]);
  while (next.length <= slot.place) next.push([]);
  const place = next[slot.place]!;
  while (place.length <= slot.direction) place.push('');
  place[slot.direction] = text;
  return next;
};

export const sameSlot = (a: Slot | undefined, b: Slot | undefined): boolean =>
  a?.place === b?.place && a?.direction === b?.direction;
