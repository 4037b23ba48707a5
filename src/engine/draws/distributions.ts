import type { Distribution } from '../rows/row.ts';
import { GROUP, type Stream } from './stream.ts';

/** Where uniform draws come from. */
type Random = Pick<Stream, 'next'>;

/** What draws of a source come from before they are placed between its ends. */
export type Shape = Pick<DrawnSource, 'distribution' | 'dof'>;

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
export type Filler<Block = Float64Array> = (block: Block, n: number, random: Random) => void;

/** The last number of single precision below one. */
const BELOW_ONE = 1 - 2 ** -24;

/**
 * Draws of a distribution by itself (JCGM 101:2008, 6.4), in single precision: rectangular from 0 to 1, triangular from 0 to
 * 2, arcsine from -1 to 1, normal or Student's t of scale 1.
 */
export function unitFiller({ distribution, dof }: Shape): Filler<Float32Array> {
  switch (distribution) {
    case 'rectangular':
      return each((random) => Math.min(BELOW_ONE, random.next()));
    case 'triangular':
      return each((random) => random.next() + random.next());
    case 'arcsine':
      return each((random) => Math.sin(2 * Math.PI * random.next()));
    case 'normal':
      return Number.isFinite(dof) ? each((random) => student(dof, random)) : normal;
  }
}

/** Where draws of a distribution by itself lie for a source: at `from` and so many times `times` of them on. */
export function placed({ low, high, distribution, k }: DrawnSource): { from: number; times: number } {
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  switch (distribution) {
    case 'rectangular':
      return { from: low, times: high - low };
    case 'triangular':
      return { from: low, times: half };
    case 'arcsine':
      return { from: middle, times: half };
    case 'normal':
      return { from: middle, times: half / k };
  }
}

/** Draws from a source by its distribution. */
export function fillerOf(source: DrawnSource): Filler {
  const { from, times } = placed(source);
  if (times === 0) return (block, n) => void block.fill(from, 0, n);
  const fill = unitFiller(source);
  const units = new Float32Array(GROUP);
  return (block, n, random) => {
    for (let done = 0; done < n; done += GROUP) {
      const some = Math.min(GROUP, n - done);
      fill(units, some, random);
      for (let i = 0; i < some; i++) block[done + i] = from + times * (units[i] as number);
    }
  };
}

const each =
  (draw: (random: Random) => number): Filler<Float32Array> =>
  (block, n, random) => {
    for (let i = 0; i < n; i++) block[i] = draw(random);
  };

/** Pairs of normal draws by Box and Muller (JCGM 101, C.4). */
const normal: Filler<Float32Array> = (block, n, random) => {
  for (let i = 0; i < n; i += 2) {
    const radius = Math.sqrt(-2 * Math.log(random.next()));
    const angle = 2 * Math.PI * random.next();
    block[i] = radius * Math.cos(angle);
    if (i + 1 < n) block[i + 1] = radius * Math.sin(angle);
  }
};

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
