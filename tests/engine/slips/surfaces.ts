import type { Draw } from './draw.ts';

/** A surface as it really is, in millimetres: its diameter at each height, from 0 to 1, and in each direction, in radians. */
export interface Surface {
  at(height: number, direction: number): number;
  mean: number;
  least: number;
  greatest: number;
}

/** How much of a kind of form a part has, mm. */
export interface Form {
  taper: number;
  bell: number;
  oval: number;
  lobes: number;
  /** Share by which out-of-round grows from one end to the other. */
  grows: number;
}

/** A part as it was made: true to a few micrometres. */
export const goodForm = (draw: Draw): Form => ({
  taper: 0.001 * draw.normal(),
  bell: 0,
  oval: 0.001 * draw.next(),
  lobes: 0,
  grows: 0,
});

/** A part worn in service: tapered, bell-mouthed, oval, each a share of its wear, one end more than the other. */
export function wornForm(draw: Draw): Form {
  const wear = 0.02 * 10 ** draw.next();
  return {
    taper: wear * draw.between(-0.8, 0.8),
    bell: draw.chance(0.4) ? wear * draw.between(-0.5, 0.5) : 0,
    oval: wear * draw.next(),
    lobes: draw.chance(0.3) ? wear * 0.4 * draw.next() : 0,
    grows: draw.between(-1, 1),
  };
}

export function surface(draw: Draw, size: number, form: Form): Surface {
  const [lie, lobed] = [draw.between(0, Math.PI), draw.between(0, Math.PI)];
  const at = (height: number, direction: number): number =>
    size +
    form.taper * (height - 0.5) +
    form.bell * ((2 * height - 1) ** 2 - 1 / 3) +
    (1 + form.grows * (height - 0.5)) *
      ((form.oval / 2) * Math.cos(2 * (direction - lie)) +
        (form.lobes / 2) * Math.cos(4 * (direction - lobed)));
  let [sum, n, least, greatest] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i <= 20; i++)
    for (let j = 0; j < 36; j++) {
      const value = at(i / 20, (j * Math.PI) / 36);
      // The ends count half: the mean along the length by the trapezium rule.
      const weight = i === 0 || i === 20 ? 0.5 : 1;
      sum += weight * value;
      n += weight;
      least = Math.min(least, value);
      greatest = Math.max(greatest, value);
    }
  return { at, mean: sum / n, least, greatest };
}

/** A gauge as it is on one day: its own error, the same for all readings, and the scatter of one, mm. */
export interface Mic {
  error: number;
  scatter: number;
  step: number;
}

/** Least and greatest of a part, or of where alone it was read, mm. */
export type Ends = Pick<Surface, 'least' | 'greatest'>;

/** Of the section read at one place, of the line read in one direction, of the spot read once; else of the whole part. */
function readThere(part: Surface, heights: readonly number[], around: number, turned: number): Ends {
  const many = Array.from({ length: 73 }, (_, i) => i / 72);
  const [height = 0] = heights;
  const there =
    heights.length === 1
      ? around === 1
        ? [part.at(height, turned)]
        : many.map((share) => part.at(height, share * Math.PI))
      : around === 1
        ? many.map((share) => part.at(share, turned))
        : [part.least, part.greatest];
  return { least: Math.min(...there), greatest: Math.max(...there) };
}

/** Readings at so many places along and so many directions around, from end to end, as they are written. */
export function readOff(
  draw: Draw,
  part: Surface,
  mic: Mic,
  along: number,
  around: number,
): { text: string; there: Ends } {
  const turned = draw.between(0, Math.PI);
  const place = draw.between(0.2, 0.8);
  const heights = Array.from({ length: along }, (_, i) =>
    along === 1 ? place : 0.05 + (0.9 * i) / (along - 1),
  );
  const stations = heights.map((height) =>
    Array.from({ length: around }, (_, j) => {
      const value =
        part.at(height, turned + (j * Math.PI) / around) + mic.error + mic.scatter * draw.normal();
      return (Math.round(value / mic.step) * mic.step).toFixed(3);
    }).join('; '),
  );
  return { text: `${stations.join(' | ')} mm`, there: readThere(part, heights, around, turned) };
}
