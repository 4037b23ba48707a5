import type { CellRecord, DecisionRule, SheetFile } from '../../../shared/sheet/format.ts';
import type { Dice } from './oracle.ts';
import {
  type At,
  type Length,
  type Ratio,
  type Standing,
  takeFromLibrary,
  type Value,
} from './proof-library.ts';

/**
 * An oracle apart from the engine of what a figure moves with: random sheets of readings, plans, factors, forces, counts
 * and equipment, in inches and millimetres, each formula as typed beside the same in plain doubles. Every number that
 * could stop proof is one of the values, so that moving it by itself shows whether the figure goes with it.
 */

export interface ProofSample {
  file: SheetFile;
  values: Value[];
  /** By the name of a worked out line, or of an output of the library, that is judged. */
  figures: Map<string, At>;
}

const UNITS = [
  ['mm', 0.001],
  ['in', 0.0254],
  ['thou', 0.0000254],
  ['cm', 0.01],
  ['um', 1e-6],
] as const;
const RULES: readonly DecisionRule[] = ['worst-case', 'iso14253-2013', 'iso14253-2017', 'simple'];
const WIDE = { lower: '-1e7 mm', upper: '1e7 mm' };

/** Whole steps, with a hair of what is left over: a step hides what it is taken from, and it counts all the same. */
const stepped = (x: number): number => Math.floor(x) + 1e-3 * (x - Math.floor(x));

export function proofSampleOf(dice: Dice): ProofSample {
  const values: Value[] = [];
  const cells: CellRecord[] = [];
  const lengths: Length[] = [];
  const ratios: Ratio[] = [];
  const figures = new Map<string, At>();

  const add = (value: Value): At => {
    const i = values.push(value) - 1;
    return (v) => v[i] as number;
  };
  const fixed = (is: Standing, at: number): At => add({ is, at, low: at, high: at });

  /** A length in one of the units, with its spread in another. */
  const sized = (): { text: string; spread: string; at: number; reach: number } => {
    const [unit, size] = dice.of(UNITS.slice(0, 2));
    const digits = unit === 'in' ? 4 : 3;
    const text = ((unit === 'in' ? 0.4 : 10) + dice.next() * (unit === 'in' ? 0.4 : 10)).toFixed(digits);
    const [fine, small] = dice.of(UNITS.slice(unit === 'in' ? 2 : 4, unit === 'in' ? 3 : 5));
    const reach = 1 + dice.to(dice.of([5, 5, 400]));
    return {
      text: `${text} ${unit}`,
      spread: ` ± ${reach} ${fine}`,
      at: Number(text) * size,
      reach: reach * small,
    };
  };

  const leaf = (i: number): void => {
    const name = `x${i}`;
    const { text, spread, at, reach } = sized();
    const spreads = dice.to(3) > 0;
    const put = (
      is: Standing,
      more: Partial<CellRecord> & Pick<CellRecord, 'role'>,
      withSpread: boolean,
    ): void => {
      cells.push({ id: name, name, quantity: 'length', entry: text + (withSpread ? spread : ''), ...more });
      const r = withSpread ? reach : 0;
      lengths.push({ text: name, at: add({ is, at, low: at - r, high: at + r }) });
    };
    const kind = dice.to(8);
    if (kind === 0) put('planned', { role: 'chosen' }, spreads);
    else if (kind === 1) put('planned', { role: 'given' }, spreads);
    else if (kind === 2) put('free', { role: 'given', basis: 'equipment' }, spreads);
    // Made and measured: its plan counts no more.
    else if (kind === 3)
      put('measured', { role: 'chosen', entry: '12 mm', measured: { entry: text + spread } }, true);
    else put('measured', { role: 'measured' }, true);
  };
  const count = 3 + dice.to(3);
  for (let i = 0; i < count; i++) leaf(i);

  takeFromLibrary({ dice, cells, lengths, ratios, figures, add, fixed });

  // A factor on a line of its own, a count, and two forces that were read.
  const plainOf = (name: string, quantity: string, role: CellRecord['role'], entry: string): void => {
    cells.push({ id: name, name, quantity, role, entry });
  };
  plainOf('share', 'number', 'given', '0.7');
  ratios.push({ text: 'share', at: () => 0.7, made: () => fixed('model', 0.7) });
  plainOf('pieces', 'number', 'given', '3');
  ratios.push({ text: 'pieces', at: () => 3, made: () => fixed('free', 3) });
  plainOf('pull', 'force', 'measured', '120 N ± 1 N');
  plainOf('load', 'force', 'measured', '100 N ± 1 N');
  ratios.push({
    text: '(pull / load)',
    at: () => 1.2,
    made: () => add({ is: 'model', at: 1.2, low: 1.18, high: 1.22 }),
  });
  plainOf('slope', 'angle', 'measured', '31 deg ± 0.1 deg');
  plainOf('drawn', 'angle', 'given', '31 deg');
  const deg = Math.PI / 180;
  const slope = add({ is: 'measured', at: 31 * deg, low: 30.9 * deg, high: 31.1 * deg });
  const drawn = fixed('planned', 31 * deg);
  cells.push({
    id: 'block',
    name: 'block',
    quantity: 'length',
    role: 'given',
    entry: '1 mm',
    basis: 'equipment',
  });
  const block = fixed('free', 0.001);

  /** Whether the author of the line being written calls it geometry: factors of its own stop no proof then. */
  let isMarked = false;
  const factor = (text: string, at: number): Length => ({ text, at: fixed(isMarked ? 'free' : 'model', at) });

  const make = (depth: number): Length => {
    if (depth === 0 || dice.to(7) === 0) {
      if (dice.to(9) > 0) return dice.of(lengths);
      const { text, at } = sized();
      return { text, at: fixed('planned', at) };
    }
    const next = (): Length => make(depth - 1);
    const [a, b] = [next(), next()];
    const pair = (text: string, at: (x: number, y: number) => number): Length => ({
      text,
      at: (v) => at(a.at(v), b.at(v)),
    });
    const scaled = (by: Length): Length => ({
      text: `(${a.text} * ${by.text})`,
      at: (v) => a.at(v) * by.at(v),
    });
    switch (dice.to(25)) {
      case 0:
      case 1:
        return pair(`(${a.text} + ${b.text})`, (x, y) => x + y);
      case 2:
      case 3:
        return pair(`(${a.text} - ${b.text})`, (x, y) => x - y);
      case 4:
        return pair(`SQRT(${a.text}^2 + ${b.text}^2)`, Math.hypot);
      case 5:
        return pair(`MAX(${a.text}; ${b.text})`, Math.max);
      case 6:
        return pair(`MIN(${a.text}; ${b.text})`, Math.min);
      case 7:
        return { text: `ABS(${a.text})`, at: (v) => Math.abs(a.at(v)) };
      case 8:
        return { text: `(2/3 * ${a.text})`, at: (v) => (2 / 3) * a.at(v) };
      case 9: {
        const n = dice.of(['0.8', '1.25', '5 %', '1.0001']);
        return scaled(factor(n, n === '5 %' ? 0.05 : Number(n)));
      }
      case 10: {
        const found = dice.of(ratios);
        // A mark frees the factors of a line, and makes no force geometry.
        const at = isMarked && found.text === 'share' ? fixed('free', 0.7) : found.made();
        return scaled({ text: found.text, at });
      }
      case 11:
        return { text: `(0 * ${b.text} + ${a.text})`, at: a.at };
      case 12:
        return { text: `(${a.text} + (${b.text} - ${b.text}))`, at: a.at };
      case 13: {
        const isSlope = dice.to(2) === 0;
        return {
          text: `(${a.text} * SIN(${isSlope ? 'slope' : 'drawn'}))`,
          at: (v) => a.at(v) * Math.sin((isSlope ? slope : drawn)(v)),
        };
      }
      case 14: {
        const [c, d] = [next(), next()];
        return {
          text: `IF(${c.text} > ${d.text}; ${a.text}; ${b.text})`,
          at: (v) => (c.at(v) > d.at(v) ? a.at(v) : b.at(v)),
        };
      }
      case 15: {
        const limit = sized();
        return {
          text: `IF(${a.text} > ${limit.text}; ${a.text}; ${b.text})`,
          at: (v) => (a.at(v) > limit.at ? a.at(v) : b.at(v)),
        };
      }
      case 16: {
        const c = next();
        return {
          text: `(${a.text} * ${b.text} / (ABS(${c.text}) + 1/4 * ${a.text}))`,
          at: (v) => (a.at(v) * b.at(v)) / (Math.abs(c.at(v)) + a.at(v) / 4),
        };
      }
      case 17: {
        const c = next();
        return {
          text: `MEDIAN(${a.text}; ${b.text}; ${c.text})`,
          at: (v) => [a.at(v), b.at(v), c.at(v)].sort((x, y) => x - y)[1] as number,
        };
      }
      case 18: {
        const by = factor('', 1);
        return {
          text: `(${a.text} * EXP((${a.text} - ${a.text}) / 1 mm))`,
          at: (v) => a.at(v) * by.at(v),
        };
      }
      case 19:
        return { text: `(PI() * ${a.text} / 3)`, at: (v) => (Math.PI * a.at(v)) / 3 };
      case 20: {
        // So many blocks as go into a length.
        return {
          text: `(${a.text} - INT(${b.text} / block) * block)`,
          at: (v) => a.at(v) - stepped(b.at(v) / block(v)) * block(v),
        };
      }
      case 21: {
        const [up, by] = [factor('', 1), dice.of(['2^0.01', 'POWER(10; -0.1)'])];
        const of = by === '2^0.01' ? 2 ** 0.01 : 10 ** -0.1;
        return { text: `(${a.text} * ${by})`, at: (v) => a.at(v) * up.at(v) * of };
      }
      case 22: {
        const major = fixed('planned', 0.008);
        return {
          text: `(${a.text} - THREADMAJOR("M8x1.25") / 2)`,
          at: (v) => a.at(v) - major(v) / 2,
        };
      }
      case 23:
        return pair(`AVERAGE(${a.text}; ${b.text})`, (x, y) => (x + y) / 2);
      default:
        return pair(`IF(AND(${a.text} > 0 mm; ${b.text} > -100 in); ${a.text}; ${b.text})`, (x, y) =>
          x > 0 && y > -2.54 ? x : y,
        );
    }
  };

  const lines = 2 + dice.to(3);
  const nominal = (at: At): number => at(values.map((one) => one.at));
  for (let i = 0; i < lines; i++) {
    const name = `y${i}`;
    isMarked = dice.to(5) === 0;
    const { text, at } = make(1 + dice.to(3));
    const kind = dice.to(8);
    const more: Partial<CellRecord> = { limits: WIDE, ...(isMarked ? { basis: 'geometry' } : {}) };
    if (kind === 0) {
      // Chosen, so held: a size still to be made, whatever it is worked out from.
      cells.push({ id: name, name, quantity: 'length', role: 'chosen', entry: `= ${text}`, ...more });
      const held = nominal(at);
      lengths.push({ text: name, at: fixed('planned', held) });
      continue;
    }
    if (kind === 1) {
      const read = sized();
      cells.push({
        id: name,
        name,
        quantity: 'length',
        role: 'worked',
        entry: `= ${text}`,
        ...more,
        measured: { entry: read.text + read.spread },
      });
      const own = add({ is: 'measured', at: read.at, low: read.at - read.reach, high: read.at + read.reach });
      lengths.push({ text: name, at: own });
      figures.set(name, own);
      continue;
    }
    if (dice.to(4) === 0) cells.push({ id: `s${i}`, role: 'section', label: 'A part' });
    cells.push({ id: name, name, quantity: 'length', role: 'worked', entry: `= ${text}`, ...more });
    lengths.push({ text: name, at });
    figures.set(name, at);
  }
  const file: SheetFile = {
    format: 'fitwright-sheet',
    version: 2,
    title: { title: 'random' },
    units: { length: dice.of(['mm', 'in']) },
    rule: dice.of(RULES),
    cells,
  };
  return { file, values, figures };
}

/** What a figure moves with anywhere in the spread: each number moved by itself, at its own size and by a hair. */
export function movesWith({ values }: ProofSample, at: At, dice: Dice, points = 60): Set<Standing> {
  const found = new Set<Standing>();
  for (let n = 0; n < points; n++) {
    const v = values.map((one) =>
      n === 0
        ? one.at
        : Math.min(one.high, one.low + (one.high - one.low) * (dice.to(3) === 0 ? dice.to(2) : dice.next())),
    );
    const here = at(v);
    values.forEach((one, i) => {
      if (found.has(one.is)) return;
      const was = v[i] as number;
      const steps = [was * (1 + 1e-6), was * (1 - 1e-6)];
      if (one.high > one.low) steps.push(one.low, one.high);
      for (const step of steps) {
        v[i] = step;
        if (Math.abs(at(v) - here) > 1e-11 * (Math.abs(here) + 0.01)) found.add(one.is);
      }
      v[i] = was;
    });
  }
  return found;
}
