import { expect, it } from 'vitest';
import { enclose } from '../../../src/language/bounds/enclose.ts';
import { catalogueOf } from '../../../src/language/functions/functions.ts';
import { parseEntry } from '../../../src/language/parse.ts';
import { at } from '../context.ts';

/**
 * Cases of the public test set of IEEE Std 1788-2015 (ITF1788, libieeep1788/elem: minimal_mul_test, minimal_sqr_test,
 * minimal_sqrt_test, minimal_pown_test, minimal_pow_test), seen. Ends are theirs, the tightest doubles there are; ours are to
 * hold them, and to reach no further than two doubles in a product, sixteen in a root or a power.
 */
const I = Number.POSITIVE_INFINITY;

/** A double written as its set writes it: `0X1.999999999999AP-4`. */
const hex = (text: string): number => {
  const [, sign, whole, part = '', power] = /^(-?)0x([\da-f]+)\.?([\da-f]*)p([+-]?\d+)$/i.exec(text) ?? [];
  if (whole === undefined) throw new Error(`no double: ${text}`);
  const size = Number.parseInt(whole + part, 16) * 2 ** (Number(power) - 4 * part.length);
  return sign ? -size : size;
};
const end = (one: number | string): number => (typeof one === 'number' ? one : hex(one));

type Ends = readonly [number | string, number | string];

const over = (text: string, ...box: Ends[]): { lo: number; hi: number } => {
  const { entry } = parseEntry(text, at());
  if (entry.kind !== 'formula') throw new Error(`no formula: ${text}`);
  const { root, ports } = enclose(entry.expr, 2, ({ name }) => 'ab'.indexOf(name), catalogueOf([]));
  box.forEach(([lo, hi], i) => {
    Object.assign(ports[i] as object, { lo: end(lo), hi: end(hi) });
  });
  root.forward();
  return root;
};

/** So many doubles further on, away from the other end. */
const outward = (x: number, by: number): number => by * 2.3e-16 * Math.abs(x);

const holds = ({ lo, hi }: { lo: number; hi: number }, [low, high]: Ends, doubles: number): void => {
  const [least, greatest] = [end(low), end(high)];
  expect(lo).toBeLessThanOrEqual(least);
  expect(hi).toBeGreaterThanOrEqual(greatest);
  if (Number.isFinite(least)) expect(lo).toBeGreaterThanOrEqual(least - outward(least, doubles));
  if (Number.isFinite(greatest)) expect(hi).toBeLessThanOrEqual(greatest + outward(greatest, doubles));
};

const TENTH = '0X1.999999999999AP-4';
const NEARLY_TWO = '0X1.FFFFFFFFFFFFP+0';

it.each<[Ends, Ends, Ends]>([
  [
    [1, 5],
    [-5, -1],
    [-25, -1],
  ],
  [
    [1, 5],
    [-5, 3],
    [-25, 15],
  ],
  [
    [1, 5],
    [1, 3],
    [1, 15],
  ],
  [
    [1, 5],
    [-I, 3],
    [-I, 15],
  ],
  [
    [1, 5],
    [-5, I],
    [-25, I],
  ],
  [
    [-1, 5],
    [-5, -1],
    [-25, 5],
  ],
  [
    [-1, 5],
    [-5, 3],
    [-25, 15],
  ],
  [
    [-10, 2],
    [-5, 3],
    [-30, 50],
  ],
  [
    [-1, 5],
    [-1, 10],
    [-10, 50],
  ],
  [
    [-2, 2],
    [-5, 3],
    [-10, 10],
  ],
  [
    [-1, 5],
    [1, 3],
    [-3, 15],
  ],
  [
    [-1, 5],
    [1, I],
    [-I, I],
  ],
  [
    [-10, -5],
    [-5, -1],
    [5, 50],
  ],
  [
    [-10, -5],
    [-5, 3],
    [-30, 50],
  ],
  [
    [-10, -5],
    [-I, 3],
    [-30, I],
  ],
  [
    [-10, -5],
    [1, I],
    [-I, -5],
  ],
  [
    [0, 0],
    [-I, I],
    [0, 0],
  ],
  [
    [TENTH, NEARLY_TWO],
    [`-${NEARLY_TWO}`, I],
    ['-0X1.FFFFFFFFFFFE1P+1', I],
  ],
  [
    [`-${TENTH}`, NEARLY_TWO],
    [`-${NEARLY_TWO}`, `-${TENTH}`],
    ['-0X1.FFFFFFFFFFFE1P+1', '0X1.999999999998EP-3'],
  ],
  [
    [`-${NEARLY_TWO}`, `-${TENTH}`],
    [TENTH, NEARLY_TWO],
    ['-0X1.FFFFFFFFFFFE1P+1', '-0X1.47AE147AE147BP-7'],
  ],
])('%j × %j is %j', (a, b, wanted) => holds(over('=a * b', a, b), wanted, 2));

it.each<[string, Ends, Ends]>([
  ['=a^2', [-1, 1], [0, 1]],
  ['=a^2', [-5, 3], [0, 25]],
  ['=a^2', [-5, 0], [0, 25]],
  ['=a^2', [TENTH, TENTH], ['0X1.47AE147AE147BP-7', '0X1.47AE147AE147CP-7']],
  ['=a^2', [`-${NEARLY_TWO}`, TENTH], [0, '0X1.FFFFFFFFFFFE1P+1']],
  ['=a^2', [-1.9, -0.33], ['0x1.be0ded288ce7p-4', '0x1.ce147ae147ae1p+1']],
  ['=a * a', [`-${NEARLY_TWO}`, `-${NEARLY_TWO}`], ['0X1.FFFFFFFFFFFEP+1', '0X1.FFFFFFFFFFFE1P+1']],
  ['=SQRT(a)', [0, 1], [0, 1]],
  ['=SQRT(a)', [0, 25], [0, 5]],
  ['=SQRT(a)', [TENTH, TENTH], ['0X1.43D136248490FP-2', '0X1.43D136248491P-2']],
  ['=SQRT(a)', [TENTH, NEARLY_TWO], ['0X1.43D136248490FP-2', '0X1.6A09E667F3BC7P+0']],
  ['=a^3', [-324.3, 2.5], ['-0x1.0436d2f418938p+25', '0x1.f4p+3']],
  ['=a^3', [0.01, 2.33], ['0x1.0c6f7a0b5ed8dp-20', '0x1.94c75e6362a6p+3']],
  ['=a^3', [-1.9, -0.33], ['-0x1.b6f9db22d0e55p+2', '-0x1.266559f6ec5b1p-5']],
  ['=a^7', [-324.3, 2.5], ['-0x1.4f109959e6d7fp+58', '0x1.312dp+9']],
  ['=a^8', [-324.3, 2.5], [0, '0x1.a87587109655p+66']],
  ['=a^8', [-1.9, -0.33], ['0x1.26f1fcdd502a3p-13', '0x1.53abd7bfc4fc6p+7']],
  ['=a^(-1)', [-324.3, 2.5], [-I, I]],
  ['=a^(-1)', [-1.9, -0.33], ['-0x1.83e0f83e0f83ep+1', '-0x1.0d79435e50d79p-1']],
  ['=a^(-2)', [-324.3, 2.5], ['0x1.3f0c482c977c9p-17', I]],
  ['=a^(-2)', [-1.9, -0.33], ['0x1.1ba81104f6c8p-2', '0x1.25d8fa1f801e1p+3']],
  ['=a^(-3)', [13.1, 13.1], ['0x1.d26df4d8b1831p-12', '0x1.d26df4d8b1832p-12']],
  ['=a^(-3)', [0.01, 2.33], ['0x1.43cfba61aacabp-4', '0x1.e848p+19']],
  ['=a^(-7)', [-1.9, -0.33], ['-0x1.254cdd3711ddbp+11', '-0x1.6e95c4a761e19p-7']],
])('%s over %j is %j', (text, a, wanted) => holds(over(text, a), wanted, 16));

it.each<[Ends, Ends]>([
  [
    [0, 1],
    [TENTH, 1],
  ],
  [
    [0, 2.5],
    ['0x1.9e7c6e43390b7p-9', 1],
  ],
  [
    [0.1, 0.1],
    ['0x1.96b230bcdc434p-1', '0x1.ddb680117ab13p-1'],
  ],
  [
    [0.1, 2.5],
    ['0x1.9e7c6e43390b7p-9', '0x1.ddb680117ab13p-1'],
  ],
  [
    [1, 2.5],
    ['0x1.9e7c6e43390b7p-9', 0.5],
  ],
  [
    [-0.1, 1],
    [TENTH, '0x1.4248ef8fc2604p+0'],
  ],
  [
    [-1, 0.1],
    ['0x1.96b230bcdc434p-1', 10],
  ],
  [
    [-2.5, 2.5],
    ['0x1.9e7c6e43390b7p-9', '0x1.3c3a4edfa9758p+8'],
  ],
  [
    [-2.5, -0.1],
    ['0x1.125fbee250664p+0', '0x1.3c3a4edfa9758p+8'],
  ],
  [
    [-2.5, -1],
    [2, '0x1.3c3a4edfa9758p+8'],
  ],
])('[0.1, 0.5] to the power of %j is %j', (b, wanted) => holds(over('=a^b', [0.1, 0.5], b), wanted, 16));
