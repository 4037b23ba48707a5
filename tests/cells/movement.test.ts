import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { TradeFunction } from '../../cells/record/cell.ts';
import { Constant, FAULTS, MUTE, Port } from '../../src/language/bounds/bound.ts';
import { Declared } from '../../src/language/bounds/declared.ts';

/** Where each number of a function lies in shop work, SI, and the texts it is asked with. */
const length = [0.001, 0.45] as const;
const RANGES: Readonly<Record<string, readonly [number, number]>> = {
  'Sommerfeld number': [0.005, 2],
  'length over diameter': [0.25, 4],
  'kinematic viscosity at 40 degC': [20e-6, 500e-6],
  'kinematic viscosity at 100 degC': [2e-6, 19e-6],
  'density at 15 degC': [850, 920],
  temperature: [260, 430],
  new_size: [0.05, 0.0512],
  cleans_up_at: [0.05, 0.0512],
  which: [1, 4],
  most: [1, 5],
  hole: [0.003, 0.03],
  share: [0.5, 0.9],
  least: [0.4, 0.65],
  wanted: [0.0001, 0.002],
  shim_1: [0.00005, 0.0005],
  shim_2: [0.00005, 0.0005],
  shim_3: [0.00005, 0.0005],
  shim_4: [0.00005, 0.0005],
};
const TEXTS: Readonly<Record<string, readonly string[]>> = {
  class: ['H7', 'p6', 'M6', 'k6', 'js7', 'RC4', 'FN3', 'LT3', '6H', '2B', '7H'],
  system: ['inch-square', 'inch-rectangular', 'metric'],
  make: ['wrapped', 'turned'],
  series: ['inch', 'mm', 'mm polish', 'UNC', 'UNF', 'metric'],
  drills: ['inch', 'metric', 'any'],
  thread: ['M8x1.25', '3/8-16 UNC'],
};

const moving = library.functions.filter((fn) => fn.takes.some((takes) => 'quantity' in takes));

const wholes = new Set(['which', 'most']);

const sample = (fn: TradeFunction) =>
  fc.tuple(
    ...fn.takes.map((takes) => {
      if ('text' in takes) return fc.constantFrom(...(TEXTS[takes.name] ?? ['']));
      // What a shim pack counts in pieces is a share of the thread elsewhere.
      const isShare = takes.name === 'most' && fn.name !== 'SHIMCOUNT';
      const [low, high] = isShare ? ([0.66, 0.9] as const) : (RANGES[takes.name] ?? length);
      if (wholes.has(takes.name) && !isShare)
        return fc.integer({ min: low, max: high }).map((x) => [x, x] as const);
      // From next to nothing, as a spread has it, to a good part of the range.
      return fc
        .tuple(
          fc.double({ min: 0, max: 1, noNaN: true }),
          fc.constantFrom(0, 1e-6, 1e-4, 1e-3, 1e-2, 0.1, 0.3),
        )
        .map(([at, wide]) => {
          const from = low + at * (high - low) * (1 - wide);
          return [from, from + wide * (high - low)] as const;
        });
    }),
  );

describe('a function of the trade says how it moves with its numbers', () => {
  it.each(moving.map((fn) => [fn.name, fn] as const))('%s', (_, fn) => {
    expect(fn.movement, `${fn.name} says nothing: its worst case has no bounds`).toBeDefined();
    for (const takes of fn.takes)
      if ('quantity' in takes && !fn.movement?.bounds)
        expect(fn.movement?.moves?.[takes.name], `${fn.name}: ${takes.name}`).toBeDefined();
    let held = 0;
    fc.assert(
      fc.property(
        sample(fn),
        fc.array(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 8, maxLength: 8 }), {
          minLength: 8,
          maxLength: 8,
        }),
        (args, points) => {
          const ports = args.map((arg) => {
            if (typeof arg === 'string') return arg;
            const port = new Port();
            [port.lo, port.hi] = arg as [number, number];
            return port;
          });
          const bound = new Declared(
            ports,
            fn as never,
            fn.movement,
            fn.takes.map(({ name }) => fn.movement?.moves?.[name]),
          );
          bound.forward();
          for (const port of ports) if (typeof port !== 'string') port.dlo = port.dhi = 0;
          bound.back(1, 1);
          const values = points.map((shares) => {
            const at = args.map((arg, i) =>
              typeof arg === 'string'
                ? arg
                : Math.min(
                    arg[1] as number,
                    (arg[0] as number) + (shares[i] as number) * ((arg[1] as number) - (arg[0] as number)),
                  ),
            );
            const value = fn.compute(...at);
            return { at, value: typeof value === 'number' ? value : undefined };
          });
          for (const { at, value } of values) {
            if (value === undefined) {
              expect(bound.flags & FAULTS, `${fn.name} ${at}`).not.toBe(0);
              continue;
            }
            held++;
            const hair = 1e-12 * Math.abs(value);
            expect(value, `${fn.name} at ${at} over ${JSON.stringify(args)}`).toBeGreaterThanOrEqual(
              bound.lo - hair,
            );
            expect(value, `${fn.name} at ${at} over ${JSON.stringify(args)}`).toBeLessThanOrEqual(
              bound.hi + hair,
            );
          }
          // One argument after another put elsewhere: the value goes the way that was said.
          args.forEach((arg, i) => {
            const port = ports[i];
            if (typeof arg === 'string' || typeof port === 'string' || bound.flags & FAULTS) return;
            for (const { at } of values) {
              const [low, high] = [at.slice(), at.slice()];
              low[i] = arg[0] as number;
              high[i] = arg[1] as number;
              const [a, b] = [fn.compute(...low), fn.compute(...high)];
              if (typeof a !== 'number' || typeof b !== 'number') continue;
              const hair = 1e-12 * Math.abs(a);
              if ((port?.dlo as number) >= 0) expect(b, `${fn.name} rises`).toBeGreaterThanOrEqual(a - hair);
              if ((port?.dhi as number) <= 0) expect(b, `${fn.name} falls`).toBeLessThanOrEqual(a + hair);
            }
          });
        },
      ),
      { seed: 31, numRuns: 400 },
    );
    expect(held, 'values compared').toBeGreaterThan(50);
  });

  it('and one that says nothing has no bounds once a number in it has a spread', () => {
    const port = new Port();
    const mute = new Declared([port, new Constant(1)], { compute: () => 1 } as never, undefined, []);
    [port.lo, port.hi] = [1, 1];
    mute.forward();
    expect([mute.lo, mute.hi]).toEqual([1, 1]);
    port.hi = 2;
    mute.forward();
    expect(mute).toMatchObject({ lo: -Infinity, hi: Infinity, flags: MUTE });
  });
});
