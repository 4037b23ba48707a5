import { philox } from './philox.ts';

/** Draws of a group: each begins at a counter of its own, so that any group can be drawn without those before it. */
export const GROUP = 500;

const PER_BLOCK = 4;
const WORDS = 64 * PER_BLOCK;
const SCALE = 2 ** -32;

/**
 * Uniform draws of one source. What it gives depends on its key, the seed and the group of draws alone: not on what other
 * sources there are, on the order of edits, or on who draws which group.
 */
export class Stream {
  private readonly words = new Int32Array(WORDS);
  private at = WORDS;
  private block = 0;
  private group = 0;
  private readonly key: readonly [number, number, number];

  /** @param key of the source: of its line and the part of it. @param seed any whole number */
  constructor(
    key: string,
    private readonly seed: number,
  ) {
    this.key = [hash(key, 0x9747b28c), hash(key, 0x3c6ef372), hash(key, 0x1b873593)];
  }

  /** Begins a group of draws. */
  begin(group: number): void {
    this.group = group;
    this.block = 0;
    this.at = WORDS;
  }

  /** Uniform, above 0 and below 1. */
  next(): number {
    if (this.at === WORDS) this.refill();
    return ((this.words[this.at++] as number) + 0x80000000 + 0.5) * SCALE;
  }

  private refill(): void {
    const { words, group, key, seed } = this;
    for (let i = 0; i < WORDS; i += PER_BLOCK)
      philox(words, i, this.block++, group, key[0], key[1], key[2], seed);
    this.at = 0;
  }
}

/** A text as 32 well mixed bits (MurmurHash3, over its UTF-16 units). */
function hash(text: string, seed: number): number {
  let h = seed;
  for (let i = 0; i < text.length; i++) {
    let k = Math.imul(text.charCodeAt(i), 0xcc9e2d51);
    k = (k << 15) | (k >>> 17);
    h ^= Math.imul(k, 0x1b873593);
    h = (h << 13) | (h >>> 19);
    h = (Math.imul(h, 5) + 0xe6546b64) | 0;
  }
  h ^= text.length;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}
