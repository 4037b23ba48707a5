import { BLOCK, spaced } from '../network/roots.ts';

/** A length from which on one is taken for a size, not for a fit, a gap or a difference, m. */
const SIZE = 5e-3;
/** How far a temperature is looked for about where it stands, K: shop temperatures, cold baths and ovens. */
const COLDER = 250;
const HOTTER = 500;
const TURN = 2 * Math.PI;

/**
 * The range to search about a value: a size from a third of it to three times; what is small, such as an interference, to
 * twenty times; what is nothing, a little to both sides. Its usual range is in it too.
 */
export function rangeAbout(
  value: number | undefined,
  quantity: string | undefined,
  usual: readonly [number, number] | undefined,
  wanted: number,
): readonly [number, number] {
  const [low, high] = aroundOf(value, quantity, Math.abs(wanted));
  return usual ? [Math.min(low, usual[0]), Math.max(high, usual[1])] : [low, high];
}

/** The same without what is usual. */
export function aroundOf(
  value: number | undefined,
  quantity: string | undefined,
  wanted: number,
): readonly [number, number] {
  if (quantity === 'temperature') {
    const here = value ?? 293.15;
    return [Math.max(1, here - COLDER), here + HOTTER];
  }
  // Nothing stands there yet: as much as the figure itself may be of its kind.
  if (value === undefined) return [0, 3 * (wanted || 1)];
  if (value === 0) {
    const reach = quantity === 'length' ? SIZE : quantity === 'temperature difference' ? HOTTER : 1;
    return [-reach, reach];
  }
  const size = Math.abs(value);
  // A turn further is the same angle again.
  if (quantity === 'angle' && size < TURN) return value > 0 ? [0, TURN] : [-TURN, 0];
  const [least, most] = quantity === 'length' && size >= SIZE ? [size / 3, 3 * size] : [0, 20 * size];
  return value > 0 ? [least, most] : [-most, -least];
}

/** A wider range than one in which there was nothing: of a size that may not be negative, still none that is. */
export function widened(
  [low, high]: readonly [number, number],
  quantity: string | undefined,
): readonly [number, number] {
  const most = 10 * Math.max(Math.abs(low), Math.abs(high));
  if (quantity === 'temperature') return [1, Math.max(high, 2000)];
  return [low >= 0 && quantity === 'length' && high > 20 * SIZE ? 0 : -most, most];
}

/** Trials to begin with: even over the range, and closer and closer about the value as it stands. */
export function trialsOver([low, high]: readonly [number, number], value: number | undefined): Float64Array {
  const even = spaced(low, high, 2 * BLOCK);
  if (value === undefined || !(value > low && value < high)) return even;
  const near: number[] = [value];
  for (const way of [high - value, low - value])
    for (let k = 0; k < BLOCK / 2; k++) near.push(value + way * 10 ** (-6 * ((k + 0.5) / (BLOCK / 2))));
  return Float64Array.from(new Set([...even, ...near])).sort();
}
