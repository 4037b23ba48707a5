/** Figures of a set of readings, all in the unit of the readings. */
export interface ReadingFigures {
  n: number;
  mean: number;
  least: number;
  greatest: number;
  range: number;
  /** Greatest spread among the directions of one station: the out-of-round as a difference of diameters. */
  outOfRound: number;
  /** Difference between the means of the first and the last station. */
  taper: number | undefined;
  /** Sample standard deviation; undefined for a single reading. */
  deviation: number | undefined;
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** @param stations readings by station along the length, then by direction; at least one reading in all. */
export function readingFigures(stations: readonly (readonly number[])[]): ReadingFigures {
  const filled = stations.filter((station) => station.length > 0);
  const all = filled.flat();
  const centre = mean(all);
  const least = Math.min(...all);
  const greatest = Math.max(...all);
  const first = filled[0] as readonly number[];
  const last = filled[filled.length - 1] as readonly number[];
  return {
    n: all.length,
    mean: all.length === 1 ? (all[0] as number) : centre,
    least,
    greatest,
    range: greatest - least,
    outOfRound: Math.max(...filled.map((station) => Math.max(...station) - Math.min(...station))),
    taper: filled.length > 1 ? Math.abs(mean(first) - mean(last)) : undefined,
    deviation:
      all.length > 1
        ? Math.sqrt(all.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (all.length - 1))
        : undefined,
  };
}
