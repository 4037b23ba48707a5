import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';
import type { Pen } from './pen.ts';
import type { Scene, Situation } from './scenes.ts';

/** A gauge as a shop reads it. */
interface Gauge {
  inch: boolean;
  step: number;
  places: number;
  /** Standard deviation of a reading and greatest size, mm. */
  sd: number;
  to: number;
}

/** What sets one shop that works by such blocks apart from another. */
export interface Ways {
  title: string;
  gauges: readonly Gauge[];
  holes: readonly string[];
  shafts: readonly string[];
  neither: readonly string[];
  /** Numbers of readings around, by place along. */
  shapes: readonly (readonly number[])[];
  apart: readonly string[];
  /** Share of lists without a unit. */
  bare: number;
  /** Smallest size, mm. */
  from: number;
  /** Wear that is usual, by how much it varies (of its logarithm), and most, mm; share of parts that are not worn. */
  wear: { usual: number; varies: number; most: number; none: number };
  /** Divisions of a dial away from its setting, and of the limits. */
  dial: { to: number; band: readonly [number, number] };
  /**
   * Share of bores by the dial worn by more than the width of their limits, and by how many widths; with them, share of those
   * out of their limits by less, on either side.
   */
  worn: { share: number; by: readonly [number, number]; out: number };
  clearance: readonly string[];
  press: readonly [string, string];
  /** What names end in. */
  ends: string;
}

const rangeOf = (stations: readonly (readonly string[])[]): number => {
  const all = stations.flat().map(Number);
  return Math.max(...all) - Math.min(...all);
};

class Loft {
  readonly cells: CellRecord[] = [];
  readonly gauge: Gauge;
  readonly pen: Pen;
  readonly scale: number;

  constructor(
    readonly draw: Draw,
    readonly ways: Ways,
  ) {
    this.gauge = draw.of(ways.gauges);
    const { inch, step, places } = this.gauge;
    this.scale = inch ? 25.4 : 1;
    const unit = draw.chance(ways.bare) ? '' : inch ? ' in' : ' mm';
    const apart = draw.of(ways.apart);
    this.pen = {
      inch,
      step,
      places,
      number: (value) => (Math.round(value / step) * step).toFixed(places),
      write: (stations) => stations.map((one) => one.join(apart)).join(' | ') + unit,
    };
  }

  size(): number {
    const { from } = this.ways;
    return from * (this.gauge.to / from) ** this.draw.next();
  }

  text(mm: number): string {
    return `${(mm / this.scale).toFixed(this.gauge.inch ? 4 : 3)} ${this.gauge.inch ? 'in' : 'mm'}`;
  }

  add(label: string, more: Omit<Partial<CellRecord>, 'id'> = {}): CellRecord {
    const n = this.cells.length;
    const name = `${label.replace(/\W+/g, '_')}_${this.ways.ends[n % this.ways.ends.length]}w`;
    const cell = { id: `w${n}`, role: 'measured', quantity: 'length', name, label, ...more } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  wear(): number {
    const { usual, varies, most, none } = this.ways.wear;
    return this.draw.chance(none) ? 0 : Math.min(most, usual * Math.exp(varies * this.draw.normal()));
  }

  read(mm: number, wear: number, most = 12, least = 1): string[][] {
    const { draw, pen, gauge, ways } = this;
    const fitting = ways.shapes.filter((shape) => {
      const n = shape.reduce<number>((a, b) => a + b, 0);
      return n <= most && n >= least;
    });
    const shape = draw.of(fitting);
    const [taper, oval, lie] = [draw.between(-0.5, 0.5), draw.between(0, 0.5), draw.between(0, Math.PI)];
    return shape.map((around, i) =>
      Array.from({ length: around }, (_, j) => {
        const form =
          taper * (i / Math.max(1, shape.length - 1) - 0.5) +
          (oval / 2) * Math.cos(2 * (lie + (Math.PI * j) / around));
        return pen.number((mm + wear * form + gauge.sd * draw.normal()) / this.scale);
      }),
    );
  }

  /** How far a reading may honestly lie off for its list and its gauge, mm. */
  own(stations: string[][]): number {
    return 2 * rangeOf(stations) * this.scale + 5 * this.gauge.sd + this.gauge.step * this.scale;
  }
}

interface Site {
  cell: CellRecord;
  field: Scene['field'];
  stations: string[][];
  /** mm. */
  loose: number;
}

const entered = (loft: Loft, cell: CellRecord, stations: string[][], loose: number): Site => {
  cell.entry = loft.pen.write(stations);
  return { cell, field: 'entry', stations, loose: loose + loft.own(stations) };
};

/** Two parts of a fit, one of which is to go wrong. */
function fitted(
  loft: Loft,
  labels: readonly [string, string],
  sizes: readonly [number, number],
  wears: readonly [number, number],
  loose: number,
): { site: Site; hole: CellRecord; shaft: CellRecord } {
  const [hole, shaft] = [loft.add(labels[0]), loft.add(labels[1])];
  const a = entered(loft, hole, loft.read(sizes[0] + wears[0], wears[0]), loose);
  const b = entered(loft, shaft, loft.read(sizes[1] - wears[1], wears[1]), loose);
  return { site: loft.draw.chance(0.5) ? a : b, hole, shaft };
}

const BLOCKS: Readonly<Record<Situation, (loft: Loft) => Site>> = {
  list: (loft) => {
    const { draw } = loft;
    const [size, wear] = [loft.size(), loft.wear()];
    const limits = draw.chance(0.4) ? { limits: { lower: loft.text(size * 0.95) } } : {};
    return entered(
      loft,
      loft.add(draw.of([...loft.ways.holes, ...loft.ways.shafts]), limits),
      loft.read(size, wear, 12, 3),
      0,
    );
  },
  plan: (loft) => {
    const { draw } = loft;
    const size = loft.size();
    const width = Math.max(4 * loft.gauge.sd, size * draw.between(2e-4, 1e-3));
    const isPlus = draw.chance(0.5);
    const tolerance = isPlus ? `+${loft.text(width)} -0` : `+0 -${loft.text(width)}`;
    const cell = loft.add(draw.of([...loft.ways.neither, ...loft.ways.shafts]), {
      role: 'chosen',
      entry: loft.text(size),
      tolerance,
    });
    const miss = draw.chance(0.06) ? draw.between(0.5, 1.2) : 0.2 * draw.normal();
    const stations = loft.read(size + width * ((isPlus ? 0.5 : -0.5) + miss), width / 8, 6);
    cell.measured = { entry: loft.pen.write(stations) };
    return { cell, field: 'measured.entry', stations, loose: 2 * width + loft.own(stations) };
  },
  limits: (loft) => {
    const { draw } = loft;
    const [size, wear, isHole] = [loft.size(), loft.wear(), draw.chance(0.5)];
    const band = Math.max(0.012, size * draw.between(1.5e-4, 6e-4));
    const cell = loft.add(draw.of(isHole ? loft.ways.holes : loft.ways.shafts), {
      limits: { lower: loft.text(size), upper: loft.text(size + band) },
    });
    const stations = loft.read(size + band * draw.next() + (isHole ? wear : -wear), wear);
    return entered(loft, cell, stations, loft.ways.wear.most + 2 * band);
  },
  fit: (loft) => {
    const { draw } = loft;
    const size = loft.size();
    const least = Math.max(0.015, size * draw.between(3e-4, 1e-3));
    const band = least * draw.between(0.6, 1.2);
    const wears = [loft.wear() / 2, loft.wear() / 2] as const;
    const sizes = [size + least + band * draw.next(), size] as const;
    const { site, hole, shaft } = fitted(
      loft,
      [draw.of(loft.ways.holes), draw.of(loft.ways.shafts)],
      sizes,
      wears,
      loft.ways.wear.most + 2 * band,
    );
    loft.add(draw.of(loft.ways.clearance), {
      role: 'worked',
      entry: `= ${hole.name} - ${shaft.name}`,
      limits: { lower: loft.text(least), upper: loft.text(least + band) },
    });
    return site;
  },
  press: (loft) => {
    const size = Math.max(loft.size(), 6e3 * loft.gauge.sd);
    const sizes = [size, size * (1 + loft.draw.between(4e-4, 1.2e-3))] as const;
    const { site, hole, shaft } = fitted(loft, loft.ways.press, sizes, [0, 0], 0.0017 * size);
    loft.add('squeeze', { role: 'worked', entry: `= ${shaft.name} - ${hole.name}` });
    return site;
  },
  group: (loft) => {
    const { draw } = loft;
    const [size, unlike] = [loft.size(), 0.02 * draw.next() + 3 * loft.gauge.sd];
    const label = draw.of([...loft.ways.shafts, ...loft.ways.neither]);
    const sites = Array.from({ length: draw.whole(4, 8) }, (_, i) => {
      const name = `${label.replace(/\W+/g, '_')}_${i + 1}`;
      const stations = loft.read(size + unlike * draw.between(-0.5, 0.5), unlike / 2, 4);
      return entered(loft, loft.add(`${label} ${i + 1}`, { name }), stations, 3 * unlike);
    });
    return draw.of(sites);
  },
  'gauge setting': (loft) => {
    const { draw, pen, scale } = loft;
    const unit = pen.inch ? 'in' : 'mm';
    const setting = Math.round(loft.size() / scale / pen.step) * pen.step;
    const { dial, worn } = loft.ways;
    const count = draw.whole(1, dial.to) * draw.of([1, -1]);
    const sense = draw.chance(0.3) ? -1 : 1;
    const band = pen.step * draw.whole(...dial.band);
    // In, or out on either side by less than their width; some are bores worn by more.
    const kind = draw.next();
    const out =
      kind < worn.share
        ? draw.between(...worn.by)
        : kind < worn.out
          ? draw.of([1, -1]) * draw.between(0, 0.9)
          : undefined;
    const place = out === undefined ? draw.next() : out > 0 ? 1 + out : out;
    const lower = setting + sense * count * pen.step - place * band;
    const cell = loft.add('bore by the dial', {
      role: 'cell',
      kind: 'gauge-setting',
      edition: 1,
      inputs: {
        set_to: `${pen.number(setting)} ${unit}`,
        divisions: `${count}`,
        division: `${pen.step} ${unit}`,
        ...(sense < 0 ? { sense: '-1' } : {}),
      },
      outputs: {
        size: { limits: { lower: loft.text(lower * scale), upper: loft.text((lower + band) * scale) } },
      },
    });
    delete cell.quantity;
    return { cell, field: 'inputs.divisions', stations: [[`${count}`]], loose: 2 * band * scale };
  },
};

/** A small sheet of such a shop by what there is to compare, one line of which is to go wrong. */
export function sceneBy(ways: Ways, situation: Situation, draw: Draw): Scene {
  const loft = new Loft(draw, ways);
  for (let i = draw.whole(0, 2); i > 0; i--) BLOCKS[draw.of(['list', 'plan', 'fit'] as const)](loft);
  const site = BLOCKS[situation](loft);
  const other = loft.add('far end of the haul rod');
  other.entry = loft.pen.write(loft.read(loft.size() * draw.of([0.6, 1.8]), 0.02));
  return {
    file: {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: ways.title },
      units: { length: loft.gauge.inch ? 'in' : 'mm' },
      rule: draw.of(['worst-case', 'iso14253-2013', 'iso14253-2017'] as const),
      cells: loft.cells,
    },
    situation,
    cell: site.cell,
    field: site.field,
    pen: loft.pen,
    stations: site.stations,
    loose: site.loose / loft.scale,
    other: other.entry,
  };
}
