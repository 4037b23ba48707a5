import { type Enclosure, enclose, type Moving } from '../../language/bounds/enclose.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import { type Grid, highColumn, lowColumn } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import { keyOf } from '../rows/key.ts';
import { standardFromEnds } from '../rows/row.ts';

/** Standard uncertainties each way over which a figure has to be straight; a source with ends goes no further. */
const REACH = 3;
/** Share of the spread by which bounds of slopes may differ. */
const STRAIGHT = 0.1;

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
  private readonly straight = new Map<Row, boolean>();

  constructor(
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, Moving>,
    /** Trees that do not change from one state to the next. */
    private readonly compiled: WeakMap<readonly Row[], { expr: Expr; own: Enclosure }>,
  ) {}

  isStraight(row: Row): boolean {
    let found = this.straight.get(row);
    if (found === undefined) {
      found = this.look(row);
      this.straight.set(row, found);
    }
    return found;
  }

  private look(row: Row): boolean {
    if (row.members.length === 0) return true;
    const cone = new Set<Row>([row]);
    for (const one of cone) for (const used of one.uses) if (used.members.length > 0) cone.add(used);
    const order = [...cone].sort((a, b) => a.place - b.place);
    for (const one of order) if (!this.ranges.has(one)) this.ranges.set(one, this.range(one));
    const slopes = new Map<Row, Range>([[row, { low: 1, high: 1 }]]);
    let spread = 0;
    let bent = 0;
    for (const one of order.reverse()) {
      const slope = slopes.get(one);
      if (!slope) continue;
      if (one.source !== undefined) {
        const u = this.standardOf(one);
        const size = Math.max(Math.abs(slope.low), Math.abs(slope.high)) * u;
        spread += size * size;
        bent += (slope.high - slope.low) * u;
        continue;
      }
      const own = this.enclosures.get(one);
      if (own?.root.flags !== 0) return false;
      for (const port of own.ports) port.dlo = port.dhi = 0;
      own.root.back(slope.low, slope.high);
      for (const [i, used] of one.uses.entries()) {
        const port = own.ports[i];
        if (!port || used.members.length === 0) continue;
        if (!Number.isFinite(port.dlo) || !Number.isFinite(port.dhi)) return false;
        const before = slopes.get(used);
        slopes.set(used, { low: (before?.low ?? 0) + port.dlo, high: (before?.high ?? 0) + port.dhi });
      }
    }
    return bent <= STRAIGHT * Math.sqrt(spread);
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
      const reach = REACH * this.standardOf(row);
      const half = body.ends.distribution === 'normal' ? reach : Math.min(ends, reach);
      return { low: middle - half, high: middle + half };
    }
    if (body.kind !== 'formula') return this.point(row);
    const own = this.enclosureOf(row, body.expr);
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

  private enclosureOf(row: Row, expr: Expr): Enclosure {
    const known = this.compiled.get(row.uses);
    let found = known?.expr === expr ? known.own : undefined;
    if (!found) {
      const slots = new Map(row.uses.map((one, i) => [one.key, i]));
      found = enclose(
        expr,
        row.uses.length,
        (ref) => slots.get(keyOf(ref)) ?? row.uses.length,
        this.functions,
      );
      this.compiled.set(row.uses, { expr, own: found });
    }
    return found;
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
