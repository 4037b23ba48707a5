import { describe, expect, test } from 'vitest';
import { philox } from '../../../src/engine/draws/philox.ts';
import { GROUP, Stream } from '../../../src/engine/draws/stream.ts';

describe('Philox 4x32-10', () => {
  // Known answers published with the generator (kat_vectors of its authors' library), seen in public copies of that file.
  test.each([
    ['00000000 00000000 00000000 00000000', '00000000 00000000', '6627e8d5 e169c58d bc57ac4c 9b00dbd8'],
    ['ffffffff ffffffff ffffffff ffffffff', 'ffffffff ffffffff', '408f276d 41c83b0e a20bc7c6 6d5451fd'],
    ['243f6a88 85a308d3 13198a2e 03707344', 'a4093822 299f31d0', 'd16cfe09 94fdcceb 5001e420 24126ea1'],
  ])('counter %s under key %s gives %s', (counter, key, expected) => {
    const words = (text: string): number[] => text.split(' ').map((word) => Number.parseInt(word, 16));
    const out = new Uint32Array(4);
    philox(
      out,
      0,
      ...(words(counter) as [number, number, number, number]),
      ...(words(key) as [number, number]),
    );
    expect([...out]).toEqual(words(expected));
  });
});

describe('a stream', () => {
  const take = (stream: Stream, group: number, n: number): number[] => {
    stream.begin(group);
    return Array.from({ length: n }, () => stream.next());
  };

  test('gives the same draws of a group whatever was drawn before', () => {
    const straight = new Stream('c5/own', 101);
    const all = [0, 1, 2].map((group) => take(straight, group, GROUP));
    const back = new Stream('c5/own', 101);
    expect(take(back, 2, GROUP)).toEqual(all[2]);
    expect(take(back, 0, 7)).toEqual(all[0]?.slice(0, 7));
  });

  test('differs by key, by group and by seed', () => {
    const first = (key: string, group: number, seed: number): number =>
      take(new Stream(key, seed), group, 1)[0] as number;
    const seen = [first('a', 0, 1), first('b', 0, 1), first('a', 1, 1), first('a', 0, 2), first('aa', 0, 1)];
    expect(new Set(seen).size).toBe(seen.length);
  });

  test('is uniform, and two of them run apart', () => {
    const n = 200_000;
    const [a, b] = [new Stream('a', 7), new Stream('b', 7)];
    const bins = new Array<number>(64).fill(0);
    let product = 0;
    for (let group = 0; group < n / GROUP; group++) {
      a.begin(group);
      b.begin(group);
      for (let i = 0; i < GROUP; i++) {
        const [x, y] = [a.next(), b.next()];
        const bin = Math.floor(x * 64);
        bins[bin] = (bins[bin] as number) + 1;
        product += (x - 0.5) * (y - 0.5);
      }
    }
    const expected = n / 64;
    const chi = bins.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
    // 63 degrees of freedom: beyond 126 once in 1e6 seeds.
    expect(chi).toBeLessThan(126);
    expect(Math.abs(product / n)).toBeLessThan(5 / 12 / Math.sqrt(n));
  });
});
