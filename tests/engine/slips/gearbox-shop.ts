import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';
import type { Pen } from './pen.ts';
import type { Scene, Situation } from './scenes.ts';

/**
 * A shop that mends feed gearboxes and sluice gear, written down before any of its sheets was computed and not changed since: most
 * of it in inches, three places along by two or three around, a scatter that grows with the size, plans of ± tolerance that
 * are missed on the heavy side, limits in thousandths, bores by the dial worn up to twice the width of their limits.
 */

interface Gauge {
  inch: boolean;
  step: number;
  places: number;
  /** Standard deviation of a reading, mm, and what is added of its size. */
  sd: number;
  to: number;
}

const GAUGES: readonly Gauge[] = [
  { inch: true, step: 0.0001, places: 4, sd: 0.002, to: 75 },
  { inch: true, step: 0.0002, places: 4, sd: 0.003, to: 150 },
  { inch: true, step: 0.001, places: 3, sd: 0.01, to: 400 },
  { inch: false, step: 0.002, places: 3, sd: 0.0015, to: 60 },
  { inch: false, step: 0.01, places: 2, sd: 0.005, to: 180 },
];
const GROWS = 1.5e-5;

const HOLES = ['feed gear bore', 'idler bush bore', 'sluice nut bore', 'cover spigot bore', 'clutch eye'];
const SHAFTS = ['feed gear shaft', 'idler pin', 'sluice stem', 'selector rod', 'worm journal'];
const NEITHER = ['thrust washer', 'gear face', 'spacer', 'shim stack'];

/** What a part comes in worn by at most, mm, and a bore of the dial, in widths of its limits. */
const MOST = 0.25;
const MOST_WIDTHS = 2;

const SHAPES = [[1], [2], [2, 2], [3, 3], [2, 2, 2], [3, 3, 3], [1, 1, 1], [1, 1], [3]] as const;

const countOf = (shape: readonly number[]): number => shape.reduce((a, b) => a + b, 0);

class Pit {
  readonly cells: CellRecord[] = [];
  readonly gauge: Gauge;
  readonly pen: Pen;
  readonly scale: number;

  constructor(readonly draw: Draw) {
    this.gauge = draw.of(GAUGES);
    const { inch, step, places } = this.gauge;
    this.scale = inch ? 25.4 : 1;
    const unit = draw.chance(0.2) ? '' : inch ? ' in' : ' mm';
    const bar = draw.of([' | ', '|']);
    this.pen = {
      inch,
      step,
      places,
      number: (value) => (Math.round(value / step) * step).toFixed(places),
      write: (stations) => stations.map((one) => one.join('; ')).join(bar) + unit,
    };
  }

  size(): number {
    return this.draw.between(10, this.draw.chance(0.7) ? Math.min(60, this.gauge.to) : this.gauge.to);
  }

  sd(mm: number): number {
    return this.gauge.sd + GROWS * mm;
  }

  text(mm: number): string {
    return `${(mm / this.scale).toFixed(this.gauge.inch ? 4 : 3)} ${this.gauge.inch ? 'in' : 'mm'}`;
  }

  add(label: string, more: Omit<Partial<CellRecord>, 'id'> = {}): CellRecord {
    const n = this.cells.length;
    const name = `${label.replace(/\W+/g, '_')}_${'rstuvwxy'[n % 8]}g`;
    const cell = { id: `g${n}`, role: 'measured', quantity: 'length', name, label, ...more } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  /** Half of it hardly worn; of the rest the square of a fair share. */
  wear(): number {
    return this.draw.chance(0.5) ? 0.004 * this.draw.next() : MOST * this.draw.next() ** 2;
  }

  read(mm: number, wear: number, most = 9, least = 1): string[][] {
    const { draw, pen } = this;
    const shape = draw.of(SHAPES.filter((one) => countOf(one) <= most && countOf(one) >= least));
    const [bell, taper] = [draw.between(0, 0.3), draw.between(-0.4, 0.4)];
    const [oval, lie] = [draw.between(0, 0.5), draw.between(0, Math.PI)];
    return shape.map((around, i) => {
      const height = shape.length < 2 ? 0 : i / (shape.length - 1) - 0.5;
      return Array.from({ length: around }, (_, j) => {
        const form =
          taper * height +
          bell * (4 * height ** 2 - 0.5) +
          (oval / 2) * Math.cos(2 * (lie + (Math.PI * j) / Math.max(2, around)));
        return pen.number((mm + wear * form + this.sd(mm) * draw.normal()) / this.scale);
      });
    });
  }

  /** How far a reading may honestly lie off for its list and its gauge, mm. */
  own(mm: number, stations: string[][]): number {
    const all = stations.flat().map(Number);
    const range = Math.max(...all) - Math.min(...all);
    return 2 * range * this.scale + 5 * this.sd(mm) + this.gauge.step * this.scale;
  }

  site(cell: CellRecord, mm: number, stations: string[][], loose: number): Site {
    cell.entry = this.pen.write(stations);
    return { cell, field: 'entry', stations, loose: loose + this.own(mm, stations) };
  }

  /** Two parts of a fit, one of which is to go wrong. */
  fit(labels: readonly [string, string], at: readonly [number, number], wear: number, loose: number) {
    const [hole, shaft] = [this.add(labels[0]), this.add(labels[1])];
    const a = this.site(hole, at[0], this.read(at[0] + wear, wear), loose);
    const b = this.site(shaft, at[1], this.read(at[1] - wear, wear), loose);
    return { site: this.draw.chance(0.5) ? a : b, hole, shaft };
  }
}

interface Site {
  cell: CellRecord;
  field: Scene['field'];
  stations: string[][];
  /** mm. */
  loose: number;
}

const BLOCKS: Readonly<Record<Situation, (pit: Pit) => Site>> = {
  list: (pit) => {
    const { draw } = pit;
    const [size, wear] = [pit.size(), pit.wear()];
    const more = draw.chance(0.3) ? { limits: { upper: pit.text(size * 1.04) } } : {};
    return pit.site(pit.add(draw.of([...HOLES, ...SHAFTS]), more), size, pit.read(size, wear, 9, 3), 0);
  },
  plan: (pit) => {
    const { draw } = pit;
    const size = pit.size();
    const half = Math.max(3 * pit.sd(size), size * draw.between(1e-4, 6e-4));
    const cell = pit.add(draw.of([...NEITHER, ...SHAFTS]), {
      role: 'chosen',
      entry: pit.text(size),
      tolerance: `± ${pit.text(half)}`,
    });
    const miss = draw.chance(0.08) ? draw.between(1, 1.8) : 0.2 + 0.35 * draw.normal();
    const stations = pit.read(size + half * miss, half / 4, 6);
    cell.measured = { entry: pit.pen.write(stations) };
    return { cell, field: 'measured.entry', stations, loose: 3 * half + pit.own(size, stations) };
  },
  limits: (pit) => {
    const { draw } = pit;
    const [size, wear, isHole] = [pit.size(), pit.wear(), draw.chance(0.5)];
    const band = 0.0254 * draw.of([0.5, 1, 1.5, 2]);
    const cell = pit.add(draw.of(isHole ? HOLES : SHAFTS), {
      limits: { lower: pit.text(size), upper: pit.text(size + band) },
    });
    const stations = pit.read(size + band * draw.next() + (isHole ? wear : -wear), wear);
    return pit.site(cell, size, stations, MOST + 2 * band);
  },
  fit: (pit) => {
    const { draw } = pit;
    const size = pit.size();
    const least = Math.max(0.0254, size * draw.between(5e-4, 1e-3));
    const band = least * draw.between(0.5, 1.4);
    const at = [size + least + band * draw.next(), size] as const;
    const labels = [draw.of(HOLES), draw.of(SHAFTS)] as const;
    const { site, hole, shaft } = pit.fit(labels, at, pit.wear() / 2, MOST + 2 * band);
    pit.add(draw.of(['running clearance', 'play in the bush']), {
      role: 'worked',
      entry: `= ${hole.name} - ${shaft.name}`,
      limits: { lower: pit.text(least), upper: pit.text(least + band) },
    });
    return site;
  },
  press: (pit) => {
    const size = Math.max(pit.size(), 6e3 * pit.gauge.sd);
    const at = [size, size * (1 + pit.draw.between(6e-4, 1.3e-3))] as const;
    const { site, hole, shaft } = pit.fit(['gear hub bore', 'sleeve outside'], at, 0, 0.0018 * size);
    pit.add('press interference', { role: 'worked', entry: `= ${shaft.name} - ${hole.name}` });
    return site;
  },
  group: (pit) => {
    const { draw } = pit;
    const size = pit.size();
    const unlike = 0.015 * draw.next() + 3 * pit.sd(size);
    const label = draw.of([...SHAFTS, ...NEITHER]);
    const sites = Array.from({ length: draw.whole(3, 6) }, (_, i) => {
      const name = `${label.replace(/\W+/g, '_')}_${i + 1}`;
      const stations = pit.read(size + unlike * draw.between(-0.5, 0.5), unlike / 2, 3);
      return pit.site(pit.add(`${label} ${i + 1}`, { name }), size, stations, 3 * unlike);
    });
    return draw.of(sites);
  },
  'gauge setting': (pit) => {
    const { draw, pen, scale } = pit;
    const unit = pen.inch ? 'in' : 'mm';
    const setting = Math.round(pit.size() / scale / pen.step) * pen.step;
    const count = draw.whole(2, 30) * draw.of([1, -1]);
    const band = pen.step * draw.whole(4, 14);
    // In, or worn open by up to twice their width; one in twelve was bored a little small.
    const kind = draw.next();
    const place =
      kind < 0.08 ? -0.6 * draw.next() : kind < 0.3 ? 1 + MOST_WIDTHS * draw.next() ** 2 : draw.next();
    const lower = setting + count * pen.step - place * band;
    const cell = pit.add('bore by the dial', {
      role: 'cell',
      kind: 'gauge-setting',
      edition: 1,
      inputs: {
        set_to: `${pen.number(setting)} ${unit}`,
        divisions: `${count}`,
        division: `${pen.step} ${unit}`,
      },
      outputs: {
        size: { limits: { lower: pit.text(lower * scale), upper: pit.text((lower + band) * scale) } },
      },
    });
    delete cell.quantity;
    return { cell, field: 'inputs.divisions', stations: [[`${count}`]], loose: MOST_WIDTHS * band * scale };
  },
};

/** A small sheet of that shop by what there is to compare, one line of which is to go wrong. */
export function gearboxScene(situation: Situation, draw: Draw): Scene {
  const pit = new Pit(draw);
  for (let i = draw.whole(0, 2); i > 0; i--) BLOCKS[draw.of(['list', 'limits', 'fit'] as const)](pit);
  const site = BLOCKS[situation](pit);
  const other = pit.add('far end of the sluice rod');
  const size = pit.size() * draw.of([0.65, 1.6]);
  other.entry = pit.pen.write(pit.read(size, 0.015));
  return {
    file: {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'gearbox shop' },
      units: { length: pit.gauge.inch ? 'in' : 'mm' },
      rule: draw.of(['worst-case', 'iso14253-2013', 'iso14253-2017'] as const),
      cells: pit.cells,
    },
    situation,
    cell: site.cell,
    field: site.field,
    pen: pit.pen,
    stations: site.stations,
    loose: site.loose / pit.scale,
    other: other.entry,
  };
}
