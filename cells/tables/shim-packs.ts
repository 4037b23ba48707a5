/** The pack chosen: how many of each shim, in the order they were given, and what they come to. */
export interface Pack {
  counts: readonly number[];
  total: number;
}

/** A hair of a shim that is not missed. */
const HAIR = 1e-6;

/**
 * The thickest pack of at most `most` shims that is no thicker than `wanted`, every pack tried; of packs equally thick the one
 * with the fewest shims, then with more of those given first. Thicknesses above zero; any number of each is at hand. Metres.
 */
export const thickestPack = (wanted: number, most: number, shims: readonly number[]): Pack => {
  const least = Math.min(...shims);
  let best: Pack & { pieces: number } = { counts: shims.map(() => 0), total: 0, pieces: 0 };
  const counts = shims.map(() => 0);
  const fill = (at: number, total: number, pieces: number): void => {
    const better = total - best.total;
    if (better > HAIR * least || (better > -HAIR * least && pieces < best.pieces))
      best = { counts: [...counts], total, pieces };
    const shim = shims[at];
    if (shim === undefined) return;
    const room = Math.floor((wanted - total) / shim + HAIR);
    for (let count = Math.min(most - pieces, Math.max(room, 0)); count >= 0; count -= 1) {
      counts[at] = count;
      fill(at + 1, total + count * shim, pieces + count);
    }
    counts[at] = 0;
  };
  fill(0, 0, 0);
  return best;
};
