import type { DecisionRule } from '../../../shared/sheet/format.ts';
import type { Row } from '../network/layout.ts';
import type { Drawn } from '../rows/results.ts';
import type { Cone } from './cone.ts';
import { clearShare, LOOKS } from './looks.ts';
import { endsOf } from './sort.ts';

export type Side = 'lower' | 'upper' | 'wear';

/** A judged row with the rows of its margins. */
export interface Asked {
  row: Row;
  margins: Partial<Record<Side, Row>>;
  rule: DecisionRule;
  /** The largest operand that entered the margins, SI: what is a trillionth of it is arithmetic, and no miss. */
  scale: number;
  /** Its verdict is so near the edge that draws are to decide it, though linear propagation is good enough elsewhere. */
  isEdge?: boolean;
}

export const UNDRAWN: Drawn = {
  draws: 0,
  isLast: false,
  centre: Number.NaN,
  u: Number.NaN,
  low: Number.NaN,
  high: Number.NaN,
  missed: {},
  within: Number.NaN,
};

const SIDES = ['lower', 'upper', 'wear'] as const;

/** Counts of one judged row over the draws so far. */
export class Tally {
  /** As long as the next look wants them. */
  private deviations = new Float32Array(LOOKS[0]);
  private found = 0;
  private draws = 0;
  private sum = 0;
  private squares = 0;
  private within = 0;
  private readonly beyond: Record<Side, number> = { lower: 0, upper: 0, wear: 0 };
  private readonly sides: readonly Side[];

  constructor(
    readonly asked: Asked,
    private readonly nominal: number,
    private readonly noise: number,
  ) {
    this.sides = SIDES.filter((side) => asked.margins[side]);
  }

  /** Takes in what was drawn last. */
  take(cone: Cone, n: number): void {
    const values = cone.of(this.asked.row);
    if (this.draws + n > this.deviations.length) {
      const longer = new Float32Array(LOOKS.find((look) => look >= this.draws + n) ?? 2 * (this.draws + n));
      longer.set(this.deviations);
      this.deviations = longer;
    }
    const { nominal, deviations } = this;
    let { found, sum, squares } = this;
    for (let i = 0; i < n; i++) {
      const deviation = (values[i] as number) - nominal;
      if (Number.isNaN(deviation)) continue;
      deviations[found++] = deviation;
      sum += deviation;
      squares += deviation * deviation;
    }
    this.found = found;
    this.sum = sum;
    this.squares = squares;
    this.draws += n;
    const outside = new Uint8Array(n);
    for (const side of this.sides) {
      const margins = cone.of(this.asked.margins[side] as Row);
      let missed = 0;
      // What cannot be computed conforms to nothing.
      for (let i = 0; i < n; i++) {
        if ((margins[i] as number) >= -this.noise) continue;
        missed++;
        if (side !== 'wear') outside[i] = 1;
      }
      this.beyond[side] += missed;
    }
    let within = 0;
    for (let i = 0; i < n; i++) if (outside[i] === 0) within++;
    this.within += within;
  }

  look(isLast: boolean): Drawn {
    const { draws, found, nominal, sum } = this;
    const missed: Drawn['missed'] = {};
    for (const side of this.sides) missed[side] = this.beyond[side] / draws;
    const mean = sum / found;
    const u = Math.sqrt(Math.max(0, this.squares - mean * sum) / Math.max(1, found - 1));
    const { low, high } = this.band(missed);
    return {
      draws,
      isLast,
      centre: nominal + mean,
      u,
      low,
      high,
      missed,
      within: this.within / draws,
    };
  }

  /**
   * The band to be shown, so that it lies within the limits, across one or outside just as the counts do. By the rule of
   * 2017 both ends together leave out what is allowed: each half of it, but where one limit takes more of it.
   */
  private band({ lower = 0, upper = 0 }: Drawn['missed']): { low: number; high: number } {
    const { rule } = this.asked;
    const p = clearShare(rule, this.draws);
    let [below, above] = [p, p];
    if (rule === 'iso14253-2017') {
      const clear = Math.max(lower, upper);
      if (lower >= 1 - p) [below, above] = [p / 2, p];
      else if (upper >= 1 - p) [below, above] = [p, p / 2];
      else if (lower + upper <= p && clear > p / 2)
        [below, above] = lower > upper ? [lower, p - lower] : [p - upper, upper];
      else [below, above] = [p / 2, p / 2];
    }
    return this.between(below, above);
  }

  private between(below: number, above: number): { low: number; high: number } {
    const { found, nominal } = this;
    if (found === 0) return { low: Number.NaN, high: Number.NaN };
    const first = Math.min(found - 1, Math.floor(below * found));
    const last = Math.max(0, found - 1 - Math.floor(above * found));
    const at = endsOf(this.deviations.subarray(0, found), Math.max(first, found - 1 - last) + 1);
    return { low: nominal + at(first), high: nominal + at(last) };
  }
}

/** A verdict that draws give stands once it is clear. */
export const isClear = ({ draws, missed }: Drawn, rule: DecisionRule, sides: readonly Side[]): boolean => {
  const p = clearShare(rule, draws);
  const shares = sides.map((side) => missed[side] ?? 0);
  if (shares.some((share) => share >= 1 - p)) return true;
  return rule === 'iso14253-2017'
    ? shares.reduce((a, b) => a + b, 0) <= p
    : shares.every((share) => share <= p);
};
