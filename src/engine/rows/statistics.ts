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
  /** Places along the length, and readings in different directions at each of them, where their number differs the least. */
  places: number;
  directions: number;
  /** Greatest difference between the means of two places. */
  along: number;
  /** What neither taper nor out-of-round explains: sum of squares, and its degrees of freedom. */
  residual: { squares: number; dof: number };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** What is left of a table of places by directions when each place and each direction has its own mean; else of the list. */
function residualOf(
  stations: readonly (readonly number[])[],
  centre: number,
): { squares: number; dof: number } {
  const rows = stations.length;
  const columns = (stations[0] as readonly number[]).length;
  const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b ** 2, 0);
  if (rows === 1 || stations.every(({ length }) => length === 1)) {
    const left = stations.flat().map((value) => value - centre);
    return { squares: sum(left), dof: left.length - 1 };
  }
  const within = stations.map((station) => {
    const own = mean(station);
    return station.map((value) => value - own);
  });
  const all = within.flat();
  if (!stations.every(({ length }) => length === columns))
    return { squares: sum(all), dof: all.length - rows };
  const around = Array.from({ length: columns }, (_, j) =>
    mean(within.map((station) => station[j] as number)),
  );
  const left = within.flatMap((station) => station.map((value, j) => value - (around[j] as number)));
  return { squares: sum(left), dof: (rows - 1) * (columns - 1) };
}

/** @param stations readings by station along the length, then by direction; at least one reading in all. */
export function readingFigures(stations: readonly (readonly number[])[]): ReadingFigures {
  const filled = stations.filter((station) => station.length > 0);
  const all = filled.flat();
  const centre = mean(all);
  const least = Math.min(...all);
  const greatest = Math.max(...all);
  const first = filled[0] as readonly number[];
  const last = filled[filled.length - 1] as readonly number[];
  const means = filled.map(mean);
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
    places: filled.length,
    directions: Math.min(...filled.map(({ length }) => length)),
    along: Math.max(...means) - Math.min(...means),
    residual: residualOf(filled, centre),
  };
}
