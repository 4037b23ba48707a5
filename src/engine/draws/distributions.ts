import type { Distribution } from '../rows/row.ts';
import type { Stream } from './stream.ts';

/** Where uniform draws come from. */
type Random = Pick<Stream, 'next'>;

/** One source as it is drawn from: ends in SI about the nominal. */
export interface DrawnSource {
  nominal: number;
  low: number;
  high: number;
  distribution: Distribution;
  /** Standard uncertainties from the middle to an end; normal sources only. */
  k: number;
  dof: number;
}

/** Fills a block with draws. */
export type Filler = (block: Float64Array, n: number, random: Random) => void;

/** Draws from a source by its distribution (JCGM 101:2008, 6.4). */
export function fillerOf(source: DrawnSource): Filler {
  const { low, high, distribution, k, dof } = source;
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  if (half === 0) return (block, n) => void block.fill(middle, 0, n);
  switch (distribution) {
    case 'rectangular':
      return each((random) => low + (high - low) * random.next());
    case 'triangular':
      return each((random) => low + half * (random.next() + random.next()));
    case 'arcsine':
      return each((random) => middle + half * Math.sin(2 * Math.PI * random.next()));
    case 'normal': {
      const scale = half / k;
      return Number.isFinite(dof)
        ? each((random) => middle + scale * student(dof, random))
        : normalFiller(middle, scale);
    }
  }
}

const each =
  (draw: (random: Random) => number): Filler =>
  (block, n, random) => {
    for (let i = 0; i < n; i++) block[i] = draw(random);
  };

/** Pairs of normal draws by Box and Muller (JCGM 101, C.4). */
function normalFiller(middle: number, scale: number): Filler {
  return (block, n, random) => {
    for (let i = 0; i < n; i += 2) {
      const radius = scale * Math.sqrt(-2 * Math.log(random.next()));
      const angle = 2 * Math.PI * random.next();
      block[i] = middle + radius * Math.cos(angle);
      if (i + 1 < n) block[i + 1] = middle + radius * Math.sin(angle);
    }
  };
}

/** Student's t with `dof` degrees of freedom, by acceptance and rejection (Kinderman and Monahan; JCGM 101, C.5). */
function student(dof: number, random: Random): number {
  for (;;) {
    const first = random.next();
    const second = random.next();
    const low = first < 0.5;
    const t = low ? 1 / (4 * first - 1) : 4 * first - 3;
    const v = low ? second / (t * t) : second;
    if (v < 1 - Math.abs(t) / 2 || v < (1 + (t * t) / dof) ** (-(dof + 1) / 2)) return t;
  }
}
