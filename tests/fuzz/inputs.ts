import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect } from 'vitest';

/** How many inputs each reader gets: a thousand with the other tests, a hundred thousand by `npm run fuzz`. */
const INPUTS = Number(process.env.FITWRIGHT_FUZZ ?? 1000);
const LONG = INPUTS > 1000;

/** Milliseconds of computing one input may take; asked only in the long run. */
const PATIENCE = 1000;

/** What reading a file or a code of up to 100 kB may take, ms. */
export const READING = 200;

/** Time this process has computed, ms: what else the machine does meanwhile does not count. */
const computed = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/**
 * Gives every input to `take`, and says how many there were and how long the slowest took. What `take` gives back is done
 * afterwards and not timed: what a test itself does to see that all is well.
 */
export async function feed<T>(
  what: string,
  seed: number,
  inputs: fc.Arbitrary<T>,
  take: (input: T) => void | (() => void) | Promise<void>,
  patience = PATIENCE,
): Promise<void> {
  let slowest = 0;
  let worst: T | undefined;
  let count = 0;
  const timed = async (input: T): Promise<number> => {
    const begun = computed();
    const done = take(input);
    if (done instanceof Promise) await done;
    const took = computed() - begun;
    if (typeof done === 'function') done();
    return took;
  };
  await fc.assert(
    fc.asyncProperty(inputs, async (input) => {
      let took = await timed(input);
      // A slow input is slow again; what the process compiled or cleaned up meanwhile is not.
      for (let again = 0; LONG && took > patience / 4 && again < 2; again += 1)
        took = Math.min(took, await timed(input));
      if (took > slowest) [slowest, worst] = [took, input];
      count += 1;
    }),
    { seed, numRuns: INPUTS, endOnFailure: true },
  );
  if (LONG) {
    const text = JSON.stringify(worst) ?? '';
    const kept = join(tmpdir(), `fitwright-fuzz-${what.replaceAll(' ', '-')}.json`);
    writeFileSync(kept, text);
    console.log(
      `${what}: ${count} inputs, the slowest ${slowest.toFixed(1)} ms: ${text.slice(0, 120)} (whole: ${kept})`,
    );
    expect(slowest, `${what}: the slowest input, ms`).toBeLessThan(patience);
  }
  expect(count).toBe(INPUTS);
}

/** Signs that have broken readers: controls, halves of pairs, direction marks, look-alikes, signs of the languages at hand. */
const NASTY = [
  ...'\0\b\t\n\r\u001b\u007f\u00a0\u00ad\u200b\u200f\u202e\u2028\u2066\ufeff\ufffe',
  '\ud800',
  '\udc00',
  '\ud83d\ude00',
  ...'{}[]()<>"\'`\\/|;,.:=+-*^%&#@!?~_$',
  ...'аеоνρ０１＝Ø±µ°″′×–—',
  '__proto__',
  'constructor',
  '<img src=x onerror=alert(1)>',
  'javascript:',
  '1e999',
  '-0',
  '9'.repeat(40),
];

export const nasty = fc.constantFrom(...NASTY);

/** A text that somebody, or a broken line, has changed in a few places. */
export const mutated = (
  texts: fc.Arbitrary<string>,
  bits: fc.Arbitrary<string> = nasty,
): fc.Arbitrary<string> =>
  fc
    .tuple(
      texts,
      fc.array(fc.tuple(fc.nat(), fc.constantFrom('put', 'cut', 'over', 'twice', 'end'), fc.nat(40), bits), {
        minLength: 1,
        maxLength: 6,
      }),
    )
    .map(([text, changes]) =>
      changes.reduce((now, [place, how, length, bit]) => {
        const at = place % (now.length + 1);
        const piece = now.slice(at, at + length);
        if (how === 'put') return now.slice(0, at) + bit + now.slice(at);
        if (how === 'cut') return now.slice(0, at) + now.slice(at + length);
        if (how === 'over') return now.slice(0, at) + bit + now.slice(at + bit.length);
        if (how === 'twice') return now.slice(0, at) + piece + piece + now.slice(at + length);
        return now.slice(0, at);
      }, text),
    );

/** Nothing that was read has reached the workings of every object. */
export function nothingPolluted(): void {
  const plain: Record<string, unknown> = {};
  for (const key of Object.keys(Object.prototype)) throw new Error(`Object.prototype has ${key}`);
  expect(plain.polluted).toBeUndefined();
}
