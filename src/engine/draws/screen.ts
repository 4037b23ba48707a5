import type { DecisionRule } from '../../../shared/sheet/format.ts';
import { coverageFactor, expandedFactor } from '../../../shared/statistics/coverage.ts';
import type { Enclosure } from '../../language/bounds/enclose.ts';
import type { Enclosures } from '../network/enclosures.ts';
import { type Grid, highColumn, lowColumn } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import { standardFromEnds } from '../rows/row.ts';

/**
 * Share of a source over which a figure has to be straight: three standard uncertainties each way of a normal one, more by
 * Student's t of one of few degrees of freedom; a source with ends goes no further.
 */
const REACHED = 0.9973002039367398;
/** Share of the spread by which bounds of slopes may differ. */
const STRAIGHT = 0.1;

/** Share by which slopes differ by rounding alone. */
const FLAT = 1e-9;
/**
 * A verdict that turns where the spread is this much wider is at the edge: by so much at most the points beyond which a
 * twentieth of a figure lies differ between a normal one and one of two ends or of slopes that bend by a tenth.
 */
const EDGE = 1.06;
/** What reaches no further than this share of the whole does not tell. */
const ASIDE = 0.02;
/** From so many degrees of freedom on Student's t is normal. */
const MANY = 1e4;

/** What one source does to a row. */
interface Part {
  u: number;
  dof: number;
  isNormal: boolean;
}

/** What a figure is made of: how far its slopes differ, as a share of its spread, and its parts. */
interface Shape {
  bent: number;
  parts: readonly Part[];
}

const CROOKED: Shape = { bent: Number.POSITIVE_INFINITY, parts: [] };

/** Standard uncertainties that cover a share, by degrees of freedom: `normal` of them where there are many. */
const covering = (share: number, normal: number): ((dof: number) => number) => {
  const known = new Map<number, number>();
  return (dof) => {
    if (!(dof < MANY)) return normal;
    let factor = known.get(dof);
    if (factor === undefined) {
      factor = coverageFactor(dof, share);
      if (known.size > 1000) known.clear();
      known.set(dof, factor);
    }
    return factor;
  };
};
const oneSided = covering(0.9, 1.6448536269514722);
const reached = covering(REACHED, 3);

const factorOf = (rule: DecisionRule, dof: number): number =>
  rule === 'iso14253-2017' ? oneSided(dof) : expandedFactor(dof);

interface Range {
  low: number;
  high: number;
}

/**
 * Tells without a draw whether linear propagation is good enough (JCGM 101, clause 8): where the bounds of a row's slopes
 * over three standard uncertainties differ by less than a tenth, weighed by what each source does to it. For one state of
 * the sheet.
 */
export class Screen {
  private readonly ranges = new Map<Row, Range>();
  private readonly enclosures = new Map<Row, Enclosure>();
  private readonly shapes = new Map<Row, Shape>();

  constructor(
    private readonly grid: Grid,
    private readonly compiled: Enclosures,
  ) {}

  isStraight(row: Row): boolean {
    return this.shapeOf(row).bent <= STRAIGHT;
  }

  /**
   * How many times as wide as linear propagation has it a straight figure may be where a verdict turns: 1 where it is
   * normal, or Student's t, and its slopes do not move. Two ends of a size add up to less than a normal figure near its
   * middle and to more on the way out; several figures of few degrees of freedom have no factor that is known.
   */
  mostWide(row: Row, rule: DecisionRule): number {
    const { parts, bent } = this.shapeOf(row);
    const u = Math.hypot(...parts.map((part) => part.u));
    if (u === 0) return 1;
    // By their points, for one of few degrees of freedom reaches far beyond its standard uncertainty.
    const points = parts.map((part) => factorOf(rule, part.dof) * part.u);
    const most = points.reduce((a, b) => Math.max(a, b), 0);
    const rest = points.reduce((a, b) => a + b, 0) - most;
    const isOne = rest <= ASIDE * u;
    const isNormal = isOne ? parts[points.indexOf(most)]?.isNormal : parts.every((part) => part.isNormal);
    const few = parts.filter(({ dof }) => dof < MANY);
    if (isOne || few.length === 0) return isNormal && bent <= FLAT ? 1 : EDGE;
    const steady = Math.hypot(...parts.map((part) => (part.dof < MANY ? 0 : part.u)));
    const apart = few.reduce(
      (sum, part) => sum + factorOf(rule, part.dof) * part.u,
      factorOf(rule, Number.POSITIVE_INFINITY) * steady,
    );
    const dof = u ** 4 / few.reduce((sum, part) => sum + part.u ** 4 / part.dof, 0);
    return (EDGE * apart) / (factorOf(rule, dof) * u);
  }

  private shapeOf(row: Row): Shape {
    let found = this.shapes.get(row);
    if (!found) {
      found = this.look(row) ?? CROOKED;
      this.shapes.set(row, found);
    }
    return found;
  }

  private look(row: Row): Shape | undefined {
    if (row.members.length === 0) return { bent: 0, parts: [] };
    const cone = new Set<Row>([row]);
    for (const one of cone) for (const used of one.uses) if (used.members.length > 0) cone.add(used);
    const order = [...cone].sort((a, b) => a.place - b.place);
    for (const one of order) if (!this.ranges.has(one)) this.ranges.set(one, this.range(one));
    const slopes = new Map<Row, Range>([[row, { low: 1, high: 1 }]]);
    let spread = 0;
    let bent = 0;
    const parts: Part[] = [];
    for (const one of order.reverse()) {
      const slope = slopes.get(one);
      if (!slope) continue;
      if (one.source !== undefined) {
        const u = this.standardOf(one);
        const size = Math.max(Math.abs(slope.low), Math.abs(slope.high)) * u;
        spread += size * size;
        bent += (slope.high - slope.low) * u;
        const { body } = one.definition;
        if (body.kind === 'source')
          parts.push({ u: size, dof: body.ends.dof, isNormal: body.ends.distribution === 'normal' });
        continue;
      }
      const own = this.enclosures.get(one);
      if (own?.root.flags !== 0) return undefined;
      for (const port of own.ports) port.dlo = port.dhi = 0;
      own.root.back(slope.low, slope.high);
      for (const [i, used] of one.uses.entries()) {
        const port = own.ports[i];
        if (!port || used.members.length === 0) continue;
        if (!Number.isFinite(port.dlo) || !Number.isFinite(port.dhi)) return undefined;
        const before = slopes.get(used);
        slopes.set(used, { low: (before?.low ?? 0) + port.dlo, high: (before?.high ?? 0) + port.dhi });
      }
    }
    return { bent: bent === 0 ? 0 : bent / Math.sqrt(spread), parts };
  }

  private standardOf(row: Row): number {
    const { body } = row.definition;
    if (body.kind !== 'source' || row.source === undefined) return 0;
    const [low, high] = this.endsOf(row);
    return standardFromEnds(low, high, body.ends.distribution, body.ends.k);
  }

  private endsOf(row: Row): [number, number] {
    const at = (column: number): number => {
      const value = this.grid.value(row.slot, column);
      return typeof value === 'number' ? value : Number.NaN;
    };
    return [at(lowColumn(row.source as number)), at(highColumn(row.source as number))];
  }

  private range(row: Row): Range {
    const { body } = row.definition;
    if (body.kind === 'source' && row.source !== undefined) {
      const [low, high] = this.endsOf(row);
      const middle = (low + high) / 2;
      const ends = Math.abs(high - low) / 2;
      const reach = reached(body.ends.dof) * this.standardOf(row);
      const half = body.ends.distribution === 'normal' ? reach : Math.min(ends, reach);
      return { low: middle - half, high: middle + half };
    }
    if (body.kind !== 'formula') return this.point(row);
    const own = this.compiled.of(row, body.expr);
    this.enclosures.set(row, own);
    for (const [i, used] of row.uses.entries()) {
      const port = own.ports[i];
      if (!port) continue;
      const { low, high } = this.ranges.get(used) ?? this.point(used);
      port.lo = low;
      port.hi = high;
      port.flags = 0;
    }
    own.root.forward();
    return { low: own.root.lo, high: own.root.hi };
  }

  private point(row: Row): Range {
    const value = this.grid.nominal(row.slot);
    const nominal =
      typeof value === 'boolean' ? Number(value) : typeof value === 'number' ? value : Number.NaN;
    return Number.isNaN(nominal)
      ? { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY }
      : { low: nominal, high: nominal };
  }
}
