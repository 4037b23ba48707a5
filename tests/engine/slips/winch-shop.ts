import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';
import type { Pen } from './pen.ts';
import type { Scene, Situation } from './scenes.ts';

/**
 * A shop that mends winches and cider presses, written down before any of its sheets was computed and not changed since: small
 * pins and great rollers, gauges read to half a division, four or six readings around, the unit once or not at all, plans of
 * one-sided tolerance, bores by a dial whose hand may run the other way, some of them worn well out of their limits.
 */

interface Gauge {
  inch: boolean;
  step: number;
  places: number;
  /** Standard deviation of a reading and greatest size, mm. */
  sd: number;
  to: number;
}

const GAUGES: readonly Gauge[] = [
  { inch: false, step: 0.005, places: 3, sd: 0.003, to: 150 },
  { inch: false, step: 0.01, places: 2, sd: 0.004, to: 100 },
  { inch: false, step: 0.05, places: 2, sd: 0.03, to: 600 },
  { inch: false, step: 0.001, places: 3, sd: 0.001, to: 75 },
  { inch: true, step: 0.0005, places: 4, sd: 0.005, to: 300 },
  { inch: true, step: 0.0001, places: 4, sd: 0.0015, to: 100 },
];

const HOLES = ['barrel bore', 'pawl eye', 'idler hub bore', 'screw nut bore', 'pulley bore'];
const SHAFTS = ['winding spindle', 'pawl pin', 'ratchet axle', 'press ram', 'brake stem'];
const NEITHER = ['drum face', 'collar', 'key seat width', 'packing'];

const rangeOf = (stations: readonly (readonly string[])[]): number => {
  const all = stations.flat().map(Number);
  return Math.max(...all) - Math.min(...all);
};

/** What a part comes in worn by at most, mm. */
const MOST = 0.2;

class Loft {
  readonly cells: CellRecord[] = [];
  readonly gauge: Gauge;
  readonly pen: Pen;
  readonly scale: number;

  constructor(readonly draw: Draw) {
    this.gauge = draw.of(GAUGES);
    const { inch, step, places } = this.gauge;
    this.scale = inch ? 25.4 : 1;
    const unit = draw.chance(0.4) ? '' : inch ? ' in' : ' mm';
    const apart = draw.of([';', '; ']);
    this.pen = {
      inch,
      step,
      places,
      number: (value) => (Math.round(value / step) * step).toFixed(places),
      write: (stations) => stations.map((one) => one.join(apart)).join(' | ') + unit,
    };
  }

  size(): number {
    return 6 * (this.gauge.to / 6) ** this.draw.next();
  }

  text(mm: number): string {
    return `${(mm / this.scale).toFixed(this.gauge.inch ? 4 : 3)} ${this.gauge.inch ? 'in' : 'mm'}`;
  }

  add(label: string, more: Omit<Partial<CellRecord>, 'id'> = {}): CellRecord {
    const n = this.cells.length;
    const name = `${label.replace(/\W+/g, '_')}_${'klmnopqr'[n % 8]}w`;
    const cell = { id: `w${n}`, role: 'measured', quantity: 'length', name, label, ...more } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  wear(): number {
    return this.draw.chance(0.5) ? 0 : Math.min(MOST, 0.03 * Math.exp(0.8 * this.draw.normal()));
  }

  read(mm: number, wear: number, most = 12, least = 1): string[][] {
    const { draw, pen, gauge } = this;
    const shapes = [[1], [1], [4], [6], [1, 1], [2, 2, 2], [4, 4], [4, 4, 4], [1, 1, 1, 1], [5]] as const;
    const fitting = shapes.filter((shape) => {
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
    return entered(loft, loft.add(draw.of([...HOLES, ...SHAFTS]), limits), loft.read(size, wear, 12, 3), 0);
  },
  plan: (loft) => {
    const { draw } = loft;
    const size = loft.size();
    const width = Math.max(4 * loft.gauge.sd, size * draw.between(2e-4, 1e-3));
    const isPlus = draw.chance(0.5);
    const tolerance = isPlus ? `+${loft.text(width)} -0` : `+0 -${loft.text(width)}`;
    const cell = loft.add(draw.of([...NEITHER, ...SHAFTS]), {
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
    const cell = loft.add(draw.of(isHole ? HOLES : SHAFTS), {
      limits: { lower: loft.text(size), upper: loft.text(size + band) },
    });
    const stations = loft.read(size + band * draw.next() + (isHole ? wear : -wear), wear);
    return entered(loft, cell, stations, MOST + 2 * band);
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
      [draw.of(HOLES), draw.of(SHAFTS)],
      sizes,
      wears,
      MOST + 2 * band,
    );
    loft.add(draw.of(['running clearance', 'float in the eye']), {
      role: 'worked',
      entry: `= ${hole.name} - ${shaft.name}`,
      limits: { lower: loft.text(least), upper: loft.text(least + band) },
    });
    return site;
  },
  press: (loft) => {
    const size = Math.max(loft.size(), 6e3 * loft.gauge.sd);
    const sizes = [size, size * (1 + loft.draw.between(4e-4, 1.2e-3))] as const;
    const labels = ['hub bore for the ring', 'ring outside'] as const;
    const { site, hole, shaft } = fitted(loft, labels, sizes, [0, 0], 0.0017 * size);
    loft.add('squeeze', { role: 'worked', entry: `= ${shaft.name} - ${hole.name}` });
    return site;
  },
  group: (loft) => {
    const { draw } = loft;
    const [size, unlike] = [loft.size(), 0.02 * draw.next() + 3 * loft.gauge.sd];
    const label = draw.of([...SHAFTS, ...NEITHER]);
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
    const count = draw.whole(1, 40) * draw.of([1, -1]);
    const sense = draw.chance(0.3) ? -1 : 1;
    const band = pen.step * draw.whole(4, 16);
    // In, or out on either side by less than their width; one in twenty is a bore worn by more.
    const kind = draw.next();
    const out =
      kind < 0.05 ? draw.between(1, 2.5) : kind < 0.25 ? draw.of([1, -1]) * draw.between(0, 0.9) : undefined;
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

/** A small sheet of that shop by what there is to compare, one line of which is to go wrong. */
export function winchScene(situation: Situation, draw: Draw): Scene {
  const loft = new Loft(draw);
  for (let i = draw.whole(0, 2); i > 0; i--) BLOCKS[draw.of(['list', 'plan', 'fit'] as const)](loft);
  const site = BLOCKS[situation](loft);
  const other = loft.add('far end of the haul rod');
  other.entry = loft.pen.write(loft.read(loft.size() * draw.of([0.6, 1.8]), 0.02));
  return {
    file: {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'winch shop' },
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
