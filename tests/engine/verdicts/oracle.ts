/**
 * An oracle apart from the engine: random sheets with kinks, steps, poles and ties, each formula as it is typed beside the
 * same in plain doubles, and plain draws or grids of points over what its sources can be. Nothing here computes by the
 * engine or by its language; the generator of draws is another one, too.
 */

/** The generator sfc32 (general knowledge); seeded. */
export class Dice {
  private a: number;
  private b = 0x9e3779b9;
  private c = 0x243f6a88;
  private d = 1;

  constructor(seed: number) {
    this.a = seed | 0;
    for (let i = 0; i < 15; i++) this.word();
  }

  private word(): number {
    const t = (((this.a + this.b) | 0) + this.d) | 0;
    this.d = (this.d + 1) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = ((this.c << 21) | (this.c >>> 11)) + t;
    this.c |= 0;
    return t >>> 0;
  }

  next(): number {
    return (this.word() + 0.5) / 2 ** 32;
  }

  to(n: number): number {
    return Math.floor(this.next() * n);
  }

  of<T>(all: readonly T[]): T {
    return all[this.to(all.length)] as T;
  }

  /** A normal draw by the polar method of Marsaglia. */
  normal(): number {
    for (;;) {
      const x = 2 * this.next() - 1;
      const y = 2 * this.next() - 1;
      const s = x * x + y * y;
      if (s > 0 && s < 1) return x * Math.sqrt((-2 * Math.log(s)) / s);
    }
  }

  /** A draw of Student's t; normal where no degrees of freedom are told. */
  student(dof?: number): number {
    if (dof === undefined) return this.normal();
    let squares = 0;
    for (let i = 0; i < dof; i++) squares += this.normal() ** 2;
    return this.normal() / Math.sqrt(squares / dof);
  }
}

/** A source of the sheet: one line with its entry, and how it is spread, in metres. */
interface Leaf {
  role: 'given' | 'chosen' | 'measured';
  entry: string;
  /** The figure as typed. */
  value: number;
  low: number;
  high: number;
  /** Normal with the ends at two standard uncertainties; else anywhere between the ends. */
  isNormal: boolean;
  /** Of so many degrees of freedom: Student's t, with the ends at two of its scale. */
  dof?: number;
  /** Of another quantity: how a formula takes it, so that it comes to a length. */
  quantity?: string;
  taken?: (name: string) => string;
}

type At = (values: readonly number[]) => number;

/** A formula as it is typed, and the same in plain doubles. */
interface Both {
  text: string;
  at: At;
}

export interface Sample {
  leaves: Leaf[];
  /** Worked out lines, each over the leaves and those before it. */
  formulas: Both[];
}

/** ISO 286-2 limit deviations of three classes at 50 mm, micrometres (as in the published tables). */
const CLASSES = [
  ['H7', 0, 25],
  ['h6', -16, 0],
  ['p6', 26, 42],
] as const;

/** What is no length, taken as so many millimetres of its unit, in either of two units of it. */
const QUANTITIES = [
  { quantity: 'force', taken: (x: string) => `(${x} / 1 N * 1 mm)`, other: ['lbf', 4.4482216152605] },
  { quantity: 'angle', taken: (x: string) => `(${x} / 1 deg * 1 mm)`, other: ['arcmin', 1 / 60] },
  { quantity: 'temperature', taken: (x: string) => `((${x} - 0 degC) / 1 K * 1 mm)`, other: ['degF', 5 / 9] },
  { quantity: 'pressure', taken: (x: string) => `(${x} / 1 MPa * 1 mm)`, other: ['psi', 0.0068947572931683] },
] as const;

function otherLeafOf(dice: Dice, role: Leaf['role']): Leaf {
  const { quantity, taken, other } = dice.of(QUANTITIES);
  const [symbol, size] =
    dice.to(2) === 0
      ? other
      : ([{ force: 'N', angle: 'deg', temperature: 'degC', pressure: 'MPa' }[quantity], 1] as const);
  const n = Number(((5 + 40 * dice.next()) / size).toFixed(1));
  const reach = Number(((0.05 + 3 * dice.next() ** 3) / size).toFixed(symbol === 'psi' ? 0 : 2));
  const zero = symbol === 'degF' ? 32 : 0;
  const value = (n * size) / 1000;
  const isPoint = quantity === 'temperature';
  if (role === 'measured' && dice.to(2) === 0 && quantity === 'force') {
    // Few readings, which scatter by more than the ± behind them.
    const all = Array.from({ length: 2 + dice.to(4) }, () =>
      Number((n + reach * (dice.next() - 0.5)).toFixed(4)),
    );
    const mean = all.reduce((sum, x) => sum + x, 0) / all.length;
    const scatter = Math.sqrt(
      all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (all.length - 1) / all.length,
    );
    if (scatter > 1e-4)
      return {
        role,
        entry: `${all.map((x) => `${x} ${symbol}`).join('; ')} ± 0.00001 ${symbol}`,
        value: (mean * size) / 1000,
        low: ((mean - 2 * scatter) * size) / 1000,
        high: ((mean + 2 * scatter) * size) / 1000,
        isNormal: true,
        dof: all.length - 1,
        quantity,
        taken,
      };
  }
  return {
    role,
    entry: `${Number((n + zero).toFixed(1))} ${symbol} ± ${reach} ${isPoint && symbol === 'degC' ? 'K' : symbol}`,
    value,
    low: value - (reach * size) / 1000,
    high: value + (reach * size) / 1000,
    isNormal: role === 'measured',
    quantity,
    taken,
  };
}

function leafOf(dice: Dice): Leaf {
  const role = dice.of(['given', 'chosen', 'measured'] as const);
  if (dice.to(5) === 0) return otherLeafOf(dice, role);
  if (role !== 'measured' && dice.to(8) === 0) {
    const [name, below, above] = dice.of(CLASSES);
    return {
      role,
      entry: `50 mm ${name}`,
      value: 0.05,
      low: 0.05 + below * 1e-6,
      high: 0.05 + above * 1e-6,
      isNormal: false,
    };
  }
  const um = dice.to(3) === 0 ? dice.of([0, 10_000, 14_000, 20_000, 30_000, 50_000]) : 1000 + dice.to(60_000);
  const most = dice.of([30, 300, 3000]);
  const reach = 1 + dice.to(most);
  if (dice.to(4) === 0) {
    // In inches, on the sheet of a shop that works in millimetres or not; its spread in another unit still.
    const tenths = 30 + dice.to(2000);
    const [unit, size] = dice.of([
      ['thou', 0.0000254],
      ['um', 1e-6],
      ['in', 0.0254],
    ] as const);
    const n = unit === 'in' ? (1 + dice.to(99)) / 10_000 : 1 + dice.to(30);
    const value = (tenths / 1000) * 0.0254;
    return {
      role,
      entry: `${(tenths / 1000).toFixed(3)} in ± ${n} ${unit}`,
      value,
      low: value - n * size,
      high: value + n * size,
      isNormal: role === 'measured',
    };
  }
  if (role === 'measured')
    return {
      role,
      entry: `${um} um ± ${reach} um`,
      value: um / 1e6,
      low: (um - reach) / 1e6,
      high: (um + reach) / 1e6,
      isNormal: true,
    };
  const [above, below] = dice.of([
    [reach, reach],
    [reach, 0],
    [0, reach],
    [reach, Math.floor(reach / 3)],
    [0, 0],
  ] as const);
  return {
    role,
    entry: `${um} um +${above} -${below} um`,
    value: um / 1e6,
    low: (um - below) / 1e6,
    high: (um + above) / 1e6,
    isNormal: false,
  };
}

/** Equal but for rounding, as the guide of the formulas says: within a trillionth of the larger. */
const apart = (a: number, b: number): number =>
  Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b), 0.05) ? 0 : a - b;
const whole = (q: number): number =>
  Math.abs(q - Math.round(q)) <= 1e-12 * Math.max(1, Math.abs(q)) ? Math.round(q) : q;
const mod = (x: number, y: number): number => {
  const q = whole(x / y);
  return Number.isInteger(q) ? 0 : x - y * Math.floor(q);
};
const orNone = (x: number): number => (Number.isFinite(x) ? x : Number.NaN);
const middle = (all: readonly number[]): number => {
  if (all.some(Number.isNaN)) return Number.NaN;
  const sorted = [...all].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2
    ? (sorted[half] as number)
    : ((sorted[half - 1] as number) + (sorted[half] as number)) / 2;
};
const halfUp = (x: number): number => Math.sign(x) * Math.floor(whole(Math.abs(x) + 0.5));

type Make = (arg: () => Both, dice: Dice) => Both;
const one =
  (text: (a: string) => string, at: (a: number) => number): Make =>
  (arg) => {
    const a = arg();
    return { text: text(a.text), at: (v) => at(a.at(v)) };
  };
const two =
  (text: (a: string, b: string) => string, at: (a: number, b: number) => number): Make =>
  (arg) => {
    const [a, b] = [arg(), arg()];
    return { text: text(a.text, b.text), at: (v) => at(a.at(v), b.at(v)) };
  };
const many =
  (name: string, at: (all: number[]) => number): Make =>
  (arg, dice) => {
    const all = Array.from({ length: 2 + dice.to(3) }, arg);
    return {
      text: `${name}(${all.map(({ text }) => text).join('; ')})`,
      at: (v) => at(all.map((x) => x.at(v))),
    };
  };

const COMPARE = {
  '>': (d: number) => d > 0,
  '>=': (d: number) => d >= 0,
  '<': (d: number) => d < 0,
  '<=': (d: number) => d <= 0,
  '=': (d: number) => d === 0,
  '<>': (d: number) => d !== 0,
} as const;
type Condition = { text: string; at: (v: readonly number[]) => boolean | undefined };
function conditionOf(arg: () => Both, dice: Dice, depth = 1): Condition {
  const kind = depth > 0 ? dice.to(6) : 5;
  if (kind < 2) {
    const [a, b] = [conditionOf(arg, dice, 0), conditionOf(arg, dice, 0)];
    return {
      text: `${kind ? 'AND' : 'OR'}(${a.text}; ${b.text})`,
      at: (v) => {
        const [x, y] = [a.at(v), b.at(v)];
        return x === undefined || y === undefined ? undefined : kind ? x && y : x || y;
      },
    };
  }
  if (kind === 2) {
    const a = conditionOf(arg, dice, 0);
    return {
      text: `NOT(${a.text})`,
      at: (v) => {
        const x = a.at(v);
        return x === undefined ? undefined : !x;
      },
    };
  }
  const op = dice.of(Object.keys(COMPARE) as (keyof typeof COMPARE)[]);
  const [a, b] = [arg(), arg()];
  return {
    text: `${a.text} ${op} ${b.text}`,
    at: (v) => {
      const d = apart(a.at(v), b.at(v));
      return Number.isNaN(d) ? undefined : COMPARE[op](d);
    },
  };
}

const MM = 0.001;

/** ISO 286-2, standard tolerance grade 7 in micrometres, as in the published tables: over 10 up to 18 mm, up to 30, up to 50, up to 80. */
const grade7 = (x: number): number => {
  const found = [
    [0.018, 18],
    [0.03, 21],
    [0.05, 25],
    [0.08, 30],
  ].find(([upTo]) => x <= (upTo as number) * (1 + 1e-12));
  return (found?.[1] as number) * 1e-6;
};

const choice: Make = (arg, dice) => {
  const test = conditionOf(arg, dice);
  const [a, b] = [arg(), arg()];
  return {
    text: `IF(${test.text}; ${a.text}; ${b.text})`,
    at: (v) => {
      const found = test.at(v);
      return found === undefined ? Number.NaN : found ? a.at(v) : b.at(v);
    },
  };
};

/** Everything gives a length, about tens of millimetres. */
const MAKES: readonly (readonly [number, Make])[] = [
  [
    6,
    two(
      (a, b) => `(${a} + ${b})`,
      (a, b) => a + b,
    ),
  ],
  [
    10,
    two(
      (a, b) => `(${a} - ${b})`,
      (a, b) => a - b,
    ),
  ],
  [
    4,
    two(
      (a, b) => `(${a} * ${b} / 10 mm)`,
      (a, b) => (a * b) / 0.01,
    ),
  ],
  [
    4,
    two(
      (a, b) => `(${a} / (${b}) * 10 mm)`,
      (a, b) => orNone((a / b) * 0.01),
    ),
  ],
  [5, many('MIN', (all) => Math.min(...all))],
  [5, many('MAX', (all) => Math.max(...all))],
  [4, many('MEDIAN', middle)],
  [2, many('AVERAGE', (all) => all.reduce((s, x) => s + x, 0) / all.length)],
  [5, one((a) => `ABS(${a})`, Math.abs)],
  [7, choice],
  [
    2,
    one(
      (a) => `(1000 * UPPERDEVIATION(MEDIAN(11 mm; ${a}; 79 mm); "H7"))`,
      (a) => (Number.isNaN(a) ? a : 1000 * grade7(Math.min(0.079, Math.max(0.011, a)))),
    ),
  ],
  [
    2,
    one(
      (a) => `(SQRT((${a}) / 10 mm) * 10 mm)`,
      (a) => (a < 0 ? Number.NaN : Math.sqrt(a / 0.01) * 0.01),
    ),
  ],
  [
    2,
    two(
      (a, b) => `SQRT((${a})^2 + (${b})^2)`,
      (a, b) => Math.sqrt(a * a + b * b),
    ),
  ],
  [
    2,
    one(
      (a) => `((${a})^2 / 10 mm)`,
      (a) => (a * a) / 0.01,
    ),
  ],
  [
    1,
    one(
      (a) => `((${a})^3 / 100 mm2)`,
      (a) => a ** 3 / 1e-4,
    ),
  ],
  [
    1,
    one(
      (a) => `(1 / (${a} / 10 mm)^2 * 10 mm)`,
      (a) => orNone(0.01 / (a / 0.01) ** 2),
    ),
  ],
  [
    1,
    one(
      (a) => `((ABS(${a}) / 10 mm)^0.5 * 10 mm)`,
      (a) => Math.sqrt(Math.abs(a) / 0.01) * 0.01,
    ),
  ],
  [
    1,
    two(
      (a, b) => `((ABS(${a}) / 10 mm + 0.1)^(${b} / 20 mm) * 10 mm)`,
      (a, b) => orNone((Math.abs(a) / 0.01 + 0.1) ** (b / 0.02) * 0.01),
    ),
  ],
  [
    1,
    one(
      (a) => `(EXP(${a} / 20 mm) * 10 mm)`,
      (a) => orNone(Math.exp(a / 0.02) * 0.01),
    ),
  ],
  [
    1,
    one(
      (a) => `(LN(ABS(${a}) / 10 mm + 0.5) * 10 mm)`,
      (a) => Math.log(Math.abs(a) / 0.01 + 0.5) * 0.01,
    ),
  ],
  [
    2,
    one(
      (a) => `(SIN(${a} / 10 mm * 1 rad) * 10 mm)`,
      (a) => Math.sin(a / 0.01) * 0.01,
    ),
  ],
  [
    1,
    one(
      (a) => `(COS(${a} / 10 mm * 1 rad) * 10 mm)`,
      (a) => Math.cos(a / 0.01) * 0.01,
    ),
  ],
  [
    1,
    one(
      (a) => `(TAN(${a} / 20 mm * 1 rad) * 10 mm)`,
      (a) => Math.tan(a / 0.02) * 0.01,
    ),
  ],
  [
    1,
    one(
      (a) => `(ASIN((${a}) / 60 mm) / 1 rad * 10 mm)`,
      (a) => orNone(Math.asin(a / 0.06) * 0.01),
    ),
  ],
  [
    1,
    one(
      (a) => `(ACOS((${a}) / 60 mm) / 1 rad * 10 mm)`,
      (a) => orNone(Math.acos(a / 0.06) * 0.01),
    ),
  ],
  [
    1,
    one(
      (a) => `(ATAN((${a}) / 10 mm) / 1 rad * 10 mm)`,
      (a) => Math.atan(a / 0.01) * 0.01,
    ),
  ],
  [
    1,
    two(
      (a, b) => `(ATAN2(${a}; ${b}) / 1 rad * 10 mm)`,
      (a, b) => (a === 0 && b === 0 ? Number.NaN : Math.atan2(b + 0, a + 0) * 0.01),
    ),
  ],
  [
    2,
    one(
      (a) => `FLOOR(${a}; 7 mm)`,
      (a) => Math.floor(whole(a / 0.007)) * 0.007,
    ),
  ],
  [
    2,
    one(
      (a) => `CEILING(${a}; 0.5 mm)`,
      (a) => Math.ceil(whole(a / 0.0005)) * 0.0005,
    ),
  ],
  [
    2,
    one(
      (a) => `MROUND(${a}; 2 mm)`,
      (a) => halfUp(a / 0.002) * 0.002,
    ),
  ],
  [
    1,
    two(
      (a, b) => `FLOOR(${a}; ABS(${b}) + 1 mm)`,
      (a, b) => Math.floor(whole(a / (Math.abs(b) + MM))) * (Math.abs(b) + MM),
    ),
  ],
  [
    2,
    one(
      (a) => `(INT(${a} / 3 mm) * 3 mm)`,
      (a) => Math.floor(whole(a / 0.003)) * 0.003,
    ),
  ],
  [
    2,
    one(
      (a) => `(ROUND(${a} / 1 mm; 0) * 1 mm)`,
      // By the decimal a person sees, which differs from this at a tie alone.
      (a) => halfUp(a / MM) * MM,
    ),
  ],
  [
    1,
    one(
      (a) => `(ROUNDUP(${a} / 1 mm; 0) * 1 mm)`,
      (a) => Math.sign(a) * Math.ceil(whole(Math.abs(a) / MM)) * MM,
    ),
  ],
  [
    1,
    one(
      (a) => `(SIGN(${a}) * 10 mm)`,
      (a) => Math.sign(a) * 0.01,
    ),
  ],
  [
    2,
    one(
      (a) => `MOD(${a}; 9 mm)`,
      (a) => mod(a, 0.009),
    ),
  ],
  [
    1,
    two(
      (a, b) => `MOD(${a}; ABS(${b}) + 2 mm)`,
      (a, b) => mod(a, Math.abs(b) + 0.002),
    ),
  ],
];
const WEIGHT = MAKES.reduce((sum, [weight]) => sum + weight, 0);

function formulaOf(dice: Dice, names: readonly string[], depth: number): Both {
  if (depth === 0 || dice.to(8) === 0) {
    if (dice.to(6) === 0) {
      const n = dice.of([1, 2, 5, 10, 20, 50, 60]);
      return { text: `${n} mm`, at: () => n / 1000 };
    }
    const i = dice.to(names.length);
    return { text: names[i] as string, at: (v) => v[i] as number };
  }
  let left = dice.to(WEIGHT);
  for (const [weight, make] of MAKES) {
    left -= weight;
    if (left < 0) return make(() => formulaOf(dice, names, depth - 1), dice);
  }
  throw new Error('no formula');
}

export function sampleOf(dice: Dice): Sample {
  const leaves = Array.from({ length: 2 + dice.to(4) }, () => leafOf(dice));
  // Often two of a size: ties.
  if (dice.to(2) === 0) leaves.push({ ...(leaves[0] as Leaf) });
  const names = leaves.map(({ taken }, i) => (taken ? taken(`x${i}`) : `x${i}`));
  const formulas: Both[] = [];
  const n = 1 + dice.to(3);
  for (let i = 0; i < n; i++) {
    const both = formulaOf(dice, names, 1 + dice.to(3));
    formulas.push(both);
    names.push(`y${i}`);
  }
  return { leaves, formulas };
}

/** The sheet's own text of an output's value at the leaves: formulas are worked out in turn. */
const evaluate = (sample: Sample, values: number[]): void => {
  for (const { at } of sample.formulas) values.push(at(values));
};

/** Values of every formula at plain draws: a column each. */
export function drawsOf(sample: Sample, n: number, dice: Dice): Float64Array[] {
  const columns = sample.formulas.map(() => new Float64Array(n));
  const values: number[] = [];
  const first = sample.leaves.length;
  for (let d = 0; d < n; d++) {
    values.length = 0;
    for (const leaf of sample.leaves)
      values.push(
        leaf.isNormal
          ? leaf.value + ((leaf.high - leaf.low) / 4) * dice.student(leaf.dof)
          : leaf.low + (leaf.high - leaf.low) * dice.next(),
      );
    evaluate(sample, values);
    columns.forEach((column, i) => {
      column[d] = values[first + i] as number;
    });
  }
  return columns;
}

/** Values of every formula at points of the box its sources make: corners, middles, anywhere, and uphill from the best. */
export function pointsOf(sample: Sample, n: number, dice: Dice): Float64Array[] {
  const { leaves } = sample;
  const first = leaves.length;
  const found: number[][] = sample.formulas.map(() => []);
  const best = sample.formulas.map(() =>
    [-1, 1].map(() => ({ value: Number.NEGATIVE_INFINITY, at: [] as number[] })),
  );
  const look = (at: readonly number[]): void => {
    const values = [...at];
    evaluate(sample, values);
    found.forEach((column, i) => {
      const value = values[first + i] as number;
      column.push(value);
      best[i]?.forEach((one, side) => {
        const height = side ? value : -value;
        if (height > one.value) {
          one.value = height;
          one.at = [...at];
        }
      });
    });
  };
  const point = (share: () => number): number[] =>
    leaves.map(({ low, high }) => Math.min(high, low + (high - low) * share()));
  for (let corner = 0; corner < 3 ** leaves.length && corner < n; corner++) {
    let left = corner;
    look(
      point(() => {
        const share = [0, 1, 0.5][left % 3] as number;
        left = Math.floor(left / 3);
        return share;
      }),
    );
  }
  look(leaves.map(({ value, low, high }) => Math.min(high, Math.max(low, value))));
  for (let i = 0; i < n; i++) look(point(() => (dice.to(4) === 0 ? dice.to(2) : dice.next())));
  for (let round = 0; round < 60; round++)
    for (const sides of best)
      for (const { at } of sides) {
        if (at.length === 0) continue;
        const size = 0.5 ** (1 + round / 4);
        look(
          at.map((x, i) => {
            const { low, high } = leaves[i] as Leaf;
            const step = dice.to(2) ? (dice.next() - 0.5) * size * (high - low) : 0;
            return Math.min(high, Math.max(low, x + step));
          }),
        );
      }
  return found.map((column) => Float64Array.from(column));
}
