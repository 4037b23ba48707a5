import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';
import { type Pen, penOf } from './pen.ts';

/** What a reading can be compared with. */
export const SITUATIONS = ['list', 'plan', 'limits', 'fit', 'press', 'group', 'gauge setting'] as const;
export type Situation = (typeof SITUATIONS)[number];

/** A small sheet that is right, with one line to go wrong. */
export interface Scene {
  file: SheetFile;
  situation: Situation;
  cell: CellRecord;
  field: 'entry' | 'measured.entry' | 'inputs.divisions';
  pen: Pen;
  /** Readings by station, as numbers are written. */
  stations: string[][];
  /** How far one may honestly lie from where it ought to, in the unit. */
  loose: number;
  /** A list of another line of the same job, in the same unit. */
  other: string;
}

const NOUNS = {
  hole: ['gudgeon eye', 'cylinder', 'hub bore', 'bearing housing', 'rocker bore', 'guide bore', 'link eye'],
  shaft: [
    'wrist pin',
    'lay shaft',
    'plunger',
    'valve stem',
    'gate spindle',
    'crank neck',
    'feed screw journal',
  ],
  size: ['flange', 'cheek', 'shoulder', 'web', 'rib', 'pad', 'boss'],
} as const;

/** One job of a shop that repairs anything, from a governor's spindle to a water wheel's gudgeon. */
class Job {
  readonly cells: CellRecord[] = [];
  readonly inch: boolean;
  readonly pen: Pen;
  /** A size, mm. */
  readonly size: number;
  /** Standard deviation of one reading, mm. */
  readonly sd: number;
  private gauge: string | undefined;

  constructor(readonly draw: Draw) {
    this.inch = draw.chance(0.5);
    this.pen = penOf(draw, this.inch);
    this.size = 5 * 70 ** draw.next();
    this.sd = this.pen.step * this.scale * draw.between(0.3, 2);
  }

  get scale(): number {
    return this.inch ? 25.4 : 1;
  }

  add(record: Omit<CellRecord, 'id'>): CellRecord {
    const cell = { id: `n${this.cells.length}`, ...record } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  /** Limits and plans are written as drawings are, whatever the pen of the readings. */
  drawn(mm: number): string {
    return `${(mm / this.scale).toFixed(this.inch ? 4 : 3)} ${this.inch ? 'in' : 'mm'}`;
  }

  /** A gauge that reaches the size, now and then. */
  gaugeFor(mm: number): string | undefined {
    if (!this.draw.chance(0.4) || this.size > 250) return undefined;
    if (this.gauge) return this.gauge;
    const step = this.inch ? 25.4 : 25;
    const low = Math.floor(mm / step) * step;
    const unit = this.inch ? 'in' : 'mm';
    this.add({
      role: 'cell',
      kind: 'gauge',
      edition: 1,
      name: 'own_gauge',
      inputs: {
        gauge: 'outside-micrometer',
        measures_from: `${Math.max(0, Math.round((low - step) / this.scale))} ${unit}`,
        measures_to: `${Math.round((low + 2 * step) / this.scale)} ${unit}`,
      },
    });
    this.gauge = 'own_gauge';
    return this.gauge;
  }

  /** Readings of a surface, as many as somebody has the patience for. */
  readings(mm: number, form: number, shape = this.shape()): string[][] {
    const { draw, pen } = this;
    const [taper, oval, lie] = [form * draw.next(), form * draw.next(), draw.between(0, Math.PI)];
    return shape.map((around, i) =>
      Array.from({ length: around }, (_, j) =>
        pen.number(
          (mm +
            taper * (i / Math.max(1, shape.length - 1) - 0.5) +
            (oval / 2) * Math.cos(lie + (2 * Math.PI * j) / around) +
            this.sd * draw.normal()) /
            this.scale,
        ),
      ),
    );
  }

  /** Readings around at each place along; sometimes one is left out. */
  shape(): number[] {
    const { draw } = this;
    if (draw.chance(0.35)) return [1];
    if (draw.chance(0.4)) return [draw.whole(2, 6)];
    const around = draw.whole(1, 4);
    return Array.from({ length: draw.whole(2, 4) }, (_, i) => (i > 0 && draw.chance(0.05) ? 1 : around));
  }
}

const rangeOf = (stations: readonly (readonly string[])[]): number => {
  const all = stations.flat().map(Number);
  return Math.max(...all) - Math.min(...all);
};

/** A scene of a situation, without a slip. */
export function sceneOf(situation: Situation, draw: Draw): Scene {
  const job = new Job(draw);
  const { pen, size, scale } = job;
  const wear = size * 0.0004 * draw.wait() + 0.004 * draw.wait();
  const noun = (of: keyof typeof NOUNS): string => draw.of(NOUNS[of]);
  const called = (label: string): { name: string; label: string } => ({
    name: label.replace(/\W+/g, '_'),
    label,
  });
  const finish = (cell: CellRecord, field: Scene['field'], stations: string[][], loose: number): Scene => {
    const text = pen.write(stations);
    if (field === 'measured.entry') cell.measured = { ...cell.measured, entry: text };
    else if (field === 'entry') cell.entry = text;
    const other = pen.write(job.readings(size * draw.of([0.6, 0.8, 1.15, 1.4, 2]), wear));
    job.add({ role: 'measured', quantity: 'length', ...called('far end of the governor rod'), entry: other });
    return {
      file: {
        format: 'fitwright-sheet',
        version: 2,
        title: { title: 'scene' },
        units: { length: job.inch ? 'in' : 'mm' },
        rule: draw.of(['worst-case', 'iso14253-2013'] as const),
        cells: job.cells,
      },
      situation,
      cell,
      field,
      pen,
      stations,
      loose: loose / scale,
      other,
    };
  };
  const measured = (of: keyof typeof NOUNS, more: Partial<CellRecord> = {}): CellRecord => {
    const gauge = job.gaugeFor(size);
    return job.add({
      role: 'measured',
      quantity: 'length',
      ...called(noun(of)),
      ...(gauge ? { gauge } : {}),
      ...more,
    });
  };
  const own = (stations: string[][]): number => 2 * rangeOf(stations) * scale + 4 * job.sd + pen.step * scale;

  switch (situation) {
    case 'list': {
      const around = draw.whole(1, 4);
      const shape = draw.chance(0.5)
        ? [draw.whole(3, 7)]
        : Array.from({ length: draw.whole(2, 4) }, () => Math.max(around, 2));
      const stations = job.readings(size, wear, shape);
      const one = draw.chance(0.3);
      const limits = one ? { upper: job.drawn(size * (1 + 0.3 * draw.next())) } : undefined;
      return finish(measured('shaft', limits ? { limits } : {}), 'entry', stations, own(stations));
    }
    case 'plan': {
      const tolerance = Math.max(pen.step * scale, size * 1e-4 * 10 ** draw.between(0, 1));
      const plus = draw.chance(0.3);
      const cell = job.add({
        role: 'chosen',
        quantity: 'length',
        ...called(noun(draw.of(['hole', 'shaft', 'size'] as const))),
        entry: job.drawn(size),
        tolerance: plus ? `+${job.drawn(2 * tolerance)} -0` : `± ${job.drawn(tolerance)}`,
      });
      const aim = size + (plus ? tolerance : 0) + (tolerance / 2.5) * draw.normal();
      const stations = job.readings(aim, tolerance * 0.3, draw.chance(0.6) ? [1] : job.shape());
      return finish(cell, 'measured.entry', stations, 2 * tolerance + own(stations));
    }
    case 'limits': {
      const band = size * 2e-4 * 10 ** draw.between(0, 1) + 0.005;
      const hole = draw.chance(0.5);
      const low = size - band * draw.next();
      const gone = draw.chance(0.5) ? 0 : draw.of([1, -1]) * band * draw.wait();
      const cell = measured(hole ? 'hole' : 'shaft', {
        limits: { lower: job.drawn(low), upper: job.drawn(low + band) },
      });
      const stations = job.readings(size + Math.abs(gone) * (hole ? 1 : -1), Math.min(wear, band));
      return finish(cell, 'entry', stations, band + Math.abs(gone) + own(stations));
    }
    case 'fit': {
      const least = size * draw.between(0.0003, 0.0012) + 0.005;
      const band = least * draw.between(0.5, 2);
      const clearance = least + band * draw.next() + (draw.chance(0.4) ? band * draw.wait() : 0);
      const bore = measured('hole');
      const journal = measured('shaft');
      const read = job.readings(size + clearance, wear);
      const taken = job.readings(size, wear);
      job.add({
        role: 'worked',
        quantity: 'length',
        ...called(draw.of(['running clearance', 'clearance', 'side play'])),
        entry: `= ${bore.name} - ${journal.name}`,
        limits: { lower: job.drawn(least), upper: job.drawn(least + band) },
      });
      const [cell, stations, beside, text] = draw.chance(0.5)
        ? [bore, read, journal, taken]
        : [journal, taken, bore, read];
      beside.entry = pen.write(text);
      return finish(cell, 'entry', stations, Math.abs(clearance - least) + 2 * band + own(stations));
    }
    case 'press': {
      // Nobody measures a squeeze with what cannot tell it.
      const ratio = draw.between(0.0004, 0.0016);
      if (pen.step * scale > size * 2e-4) return sceneOf(situation, draw);
      const housing = measured('hole');
      const sleeve = measured('shaft', called(draw.of(['sleeve outside', 'ring outside', 'liner o.d.'])));
      const read = job.readings(size, size * 1e-4);
      const taken = job.readings(size * (1 + ratio), size * 5e-5);
      job.add({
        role: 'worked',
        quantity: 'length',
        ...called(draw.of(['interference', 'squeeze'])),
        entry: `= ${sleeve.name} - ${housing.name}`,
      });
      const [cell, stations, beside, text] = draw.chance(0.5)
        ? [housing, read, sleeve, taken]
        : [sleeve, taken, housing, read];
      beside.entry = pen.write(text);
      return finish(cell, 'entry', stations, size * 0.0017 + own(stations));
    }
    case 'group': {
      const label = noun(draw.of(['hole', 'shaft', 'size'] as const));
      const n = draw.whole(3, 6);
      const unlike = Math.min(wear, size * 0.002);
      const letters = draw.chance(0.3);
      const shape = draw.chance(0.6) ? [1] : job.shape();
      const lines = Array.from({ length: n }, (_, i) => {
        const which = letters ? 'abcdef'[i] : `${i + 1}`;
        const cell = job.add({ role: 'measured', quantity: 'length', ...called(`${label} ${which}`) });
        const stations = job.readings(size + unlike * draw.between(-1, 1), wear, shape);
        cell.entry = pen.write(stations);
        return { cell, stations };
      });
      const at = draw.of(lines);
      return finish(at.cell, 'entry', at.stations, 4 * unlike + own(at.stations));
    }
    case 'gauge setting': {
      const step = pen.step;
      const count = Math.max(3, Math.round(draw.wait() * 12)) * (draw.chance(0.5) ? 1 : -1);
      const read = size / scale + count * step;
      const limit = Math.max(2, Math.abs(count) * draw.between(0.2, 0.6)) * step;
      const unit = job.inch ? 'in' : 'mm';
      const cell = job.add({
        role: 'cell',
        kind: 'gauge-setting',
        edition: 1,
        ...called(noun('hole')),
        inputs: {
          set_to: `${pen.number(size / scale)} ${unit}`,
          divisions: String(count),
          division: `${step} ${unit}`,
        },
        outputs: {
          size: {
            limits: {
              lower: job.drawn((read - limit * draw.between(0.3, 1)) * scale),
              upper: job.drawn((read + limit * draw.between(0.3, 1)) * scale),
            },
          },
        },
      } as Omit<CellRecord, 'id'>);
      return finish(cell, 'inputs.divisions', [[String(count)]], 2 * limit * scale);
    }
  }
}
