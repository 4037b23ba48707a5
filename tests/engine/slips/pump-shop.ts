import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';
import type { Pen } from './pen.ts';
import type { Scene, Situation } from './scenes.ts';

/**
 * A shop that rebuilds pumps and gates, its habits settled before any of its sheets was computed: it repeats every reading at a
 * place, writes the unit behind each one or never, leaves noughts out, and takes in what is worn from nothing to three
 * tenths of a millimetre whatever its limits are.
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
  { inch: false, step: 0.001, places: 3, sd: 0.0012, to: 200 },
  { inch: false, step: 0.01, places: 2, sd: 0.005, to: 250 },
  { inch: false, step: 0.02, places: 2, sd: 0.012, to: 250 },
  { inch: true, step: 0.0001, places: 4, sd: 0.0018, to: 150 },
  { inch: true, step: 0.001, places: 3, sd: 0.012, to: 250 },
];

const HOLES = ['wear ring bore', 'stuffing box bore', 'impeller hub bore', 'lantern bore', 'gate eye'];
const SHAFTS = ['impeller shaft', 'shaft sleeve outside', 'gate pivot', 'rocker pin', 'feed plunger'];
const NEITHER = ['land', 'hub length', 'cheek', 'spacer', 'stop'];

/** What a part is worn by at most, mm. */
const MOST = 0.3;

const rangeOf = (stations: readonly (readonly string[])[]): number => {
  const all = stations.flat().map(Number);
  return Math.max(...all) - Math.min(...all);
};

class Bench {
  readonly cells: CellRecord[] = [];
  readonly pen: Pen;
  readonly gauge: Gauge;
  readonly scale: number;

  constructor(readonly draw: Draw) {
    this.gauge = draw.of(GAUGES);
    const { inch, step, places } = this.gauge;
    this.scale = inch ? 25.4 : 1;
    const [trims, bare, each] = [draw.chance(0.25), draw.chance(0.3), draw.chance(0.3)];
    const unit = bare ? '' : inch ? ' in' : ' mm';
    this.pen = {
      inch,
      step,
      places,
      number: (value) => {
        const text = (Math.round(value / step) * step).toFixed(places);
        return trims ? text.replace(/(\.\d*?[1-9])0+$/, '$1') : text;
      },
      write: (stations) => {
        const lists = stations.map((one) => one.map((text) => (each ? `${text}${unit}` : text)).join('; '));
        return lists.join(' | ') + (each ? '' : unit);
      },
    };
  }

  size(): number {
    return 15 * (this.gauge.to / 15) ** this.draw.next();
  }

  text(mm: number): string {
    return `${(mm / this.scale).toFixed(this.gauge.inch ? 4 : 3)} ${this.gauge.inch ? 'in' : 'mm'}`;
  }

  add(label: string, more: Omit<Partial<CellRecord>, 'id'> = {}): CellRecord {
    const n = this.cells.length;
    const name = `${label.replace(/\W+/g, '_')}_${'stuvwxyz'[n % 8]}${'abcdefgh'[n % 8]}`;
    const cell = { id: `f${n}`, role: 'measured', quantity: 'length', name, label, ...more } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  /** Worn from nothing to the most, each order of magnitude as often. */
  wear(): number {
    return this.draw.chance(0.6) ? 0 : MOST * 100 ** -this.draw.next();
  }

  read(mm: number, wear: number, most = 12): string[][] {
    const { draw, pen, gauge } = this;
    const shapes = [[1], [2], [3], [2, 2], [3, 3], [1, 1, 1], [4, 4], [2, 2, 2], [3, 2]] as const;
    const fitting = shapes.filter((shape) => shape.reduce<number>((a, b) => a + b, 0) <= most);
    const shape = draw.of(fitting);
    const [taper, oval, lie] = [draw.between(-0.4, 0.4), draw.between(0, 0.4), draw.between(0, Math.PI)];
    return shape.map((around, i) =>
      Array.from({ length: around }, (_, j) => {
        const form =
          taper * (i / Math.max(1, shape.length - 1) - 0.5) +
          (oval / 2) * Math.cos(lie + (2 * Math.PI * j) / Math.max(2, around));
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

function entered(bench: Bench, cell: CellRecord, stations: string[][], loose: number): Site {
  cell.entry = bench.pen.write(stations);
  return { cell, field: 'entry', stations, loose: loose + bench.own(stations) };
}

/** Two parts of a fit, one of which is to go wrong. */
function fitted(
  bench: Bench,
  labels: readonly [string, string],
  sizes: readonly [number, number],
  wears: readonly [number, number],
  loose: number,
): { site: Site; hole: CellRecord; shaft: CellRecord } {
  const [hole, shaft] = [bench.add(labels[0]), bench.add(labels[1])];
  const a = entered(bench, hole, bench.read(sizes[0] + wears[0], wears[0]), loose);
  const b = entered(bench, shaft, bench.read(sizes[1] - wears[1], wears[1]), loose);
  return { site: bench.draw.chance(0.5) ? a : b, hole, shaft };
}

const BLOCKS: Readonly<Record<Situation, (bench: Bench) => Site>> = {
  list: (bench) => {
    const { draw } = bench;
    const [size, wear] = [bench.size(), bench.wear()];
    let stations = bench.read(size, wear);
    while (stations.flat().length < 3) stations = bench.read(size, wear);
    const limits = draw.chance(0.3) ? { limits: { upper: bench.text(size * 1.1) } } : {};
    return entered(bench, bench.add(draw.of([...HOLES, ...SHAFTS]), limits), stations, 0);
  },
  plan: (bench) => {
    const { draw } = bench;
    const size = bench.size();
    const half = Math.max(2 * bench.gauge.sd, size * draw.between(1e-4, 1e-3));
    const more = { role: 'chosen', entry: bench.text(size), tolerance: `± ${bench.text(half)}` } as const;
    const cell = bench.add(draw.of([...NEITHER, ...SHAFTS]), more);
    const miss = draw.chance(0.08) ? draw.between(1, 3) : 0.5 * draw.normal();
    const stations = bench.read(size + half * miss, half / 4, 4);
    cell.measured = { entry: bench.pen.write(stations) };
    return { cell, field: 'measured.entry', stations, loose: 4 * half + bench.own(stations) };
  },
  limits: (bench) => {
    const { draw } = bench;
    const [size, wear, isHole] = [bench.size(), bench.wear(), draw.chance(0.5)];
    const band = Math.max(0.01, size * draw.between(2e-4, 8e-4));
    const cell = bench.add(draw.of(isHole ? HOLES : SHAFTS), {
      limits: { lower: bench.text(size), upper: bench.text(size + band) },
    });
    const stations = bench.read(size + band * draw.next() + (isHole ? wear : -wear), wear);
    return entered(bench, cell, stations, MOST + 2 * band);
  },
  fit: (bench) => {
    const { draw } = bench;
    const least = draw.between(0.02, 0.1);
    const band = least * draw.between(0.8, 1.5);
    const wears = [bench.wear() / 2, bench.wear() / 2] as const;
    const size = bench.size();
    const labels = [draw.of(HOLES), draw.of(SHAFTS)] as const;
    const sizes = [size + least + band * draw.next(), size] as const;
    const { site, hole, shaft } = fitted(bench, labels, sizes, wears, MOST + 2 * band);
    bench.add('running clearance', {
      role: 'worked',
      entry: `= ${hole.name} - ${shaft.name}`,
      limits: { lower: bench.text(least), upper: bench.text(least + band) },
    });
    return site;
  },
  press: (bench) => {
    const { draw } = bench;
    const size = Math.max(bench.size(), 5e3 * bench.gauge.sd);
    const sizes = [size, size * (1 + draw.between(5e-4, 1.5e-3))] as const;
    const { site, hole, shaft } = fitted(
      bench,
      ['housing bore', 'liner outside'],
      sizes,
      [0, 0],
      0.002 * size,
    );
    bench.add('interference', { role: 'worked', entry: `= ${shaft.name} - ${hole.name}` });
    return site;
  },
  group: (bench) => {
    const { draw } = bench;
    const [size, unlike] = [bench.size(), 0.03 * draw.next() + 2 * bench.gauge.sd];
    const label = draw.of([...SHAFTS, ...NEITHER]);
    const sites = Array.from({ length: draw.whole(3, 7) }, (_, i) => {
      const name = `${label.replace(/\W+/g, '_')}_${i + 1}`;
      const stations = bench.read(size + unlike * draw.between(-0.5, 0.5), unlike / 2, 3);
      return entered(bench, bench.add(`${label} ${i + 1}`, { name }), stations, 3 * unlike);
    });
    return draw.of(sites);
  },
  'gauge setting': (bench) => {
    const { draw, pen, scale } = bench;
    const unit = pen.inch ? 'in' : 'mm';
    const setting = Math.round(bench.size() / scale / pen.step) * pen.step;
    const count = draw.whole(2, 20) * draw.of([1, -1]);
    const band = pen.step * draw.whole(3, 12);
    // One in four is out of its limits, by up to their width.
    const miss = draw.chance(0.25) ? band * draw.between(0.5, 1.5) * draw.of([1, -1]) : 0;
    const middle = setting + count * pen.step - miss;
    const cell = bench.add('bore by the dial', {
      role: 'cell',
      kind: 'gauge-setting',
      edition: 1,
      inputs: {
        set_to: `${pen.number(setting)} ${unit}`,
        divisions: `${count}`,
        division: `${pen.step} ${unit}`,
      },
      outputs: {
        size: {
          limits: {
            lower: bench.text((middle - band / 2) * scale),
            upper: bench.text((middle + band / 2) * scale),
          },
        },
      },
    });
    delete cell.quantity;
    return { cell, field: 'inputs.divisions', stations: [[`${count}`]], loose: 3 * band * scale };
  },
};

/** A small sheet of that shop by what there is to compare, one line of which is to go wrong. */
export function pumpScene(situation: Situation, draw: Draw): Scene {
  const bench = new Bench(draw);
  for (let i = draw.whole(0, 2); i > 0; i--) BLOCKS[draw.of(['list', 'limits', 'fit'] as const)](bench);
  const site = BLOCKS[situation](bench);
  const other = bench.add('far end of the lift rod');
  other.entry = bench.pen.write(bench.read(bench.size() * draw.of([0.6, 1.7]), 0.02));
  return {
    file: {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'pump shop' },
      units: { length: bench.gauge.inch ? 'in' : 'mm' },
      rule: draw.of(['worst-case', 'iso14253-2013', 'iso14253-2017'] as const),
      cells: bench.cells,
    },
    situation,
    cell: site.cell,
    field: site.field,
    pen: bench.pen,
    stations: site.stations,
    loose: site.loose / bench.scale,
    other: other.entry,
  };
}
