import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';
import type { Pen } from './pen.ts';
import type { Scene, Situation } from './scenes.ts';

/**
 * A shop that no question was tuned on: it reads a part with whatever is at hand, one gauge a job; most of what it takes in is
 * hardly worn and some of it is worn out; now and then a reading is three times as far off as usual. Nobody who changes a share or
 * a bound of the questions looks at what these sheets show first.
 */

/** What is at hand, and what it is read to: mm, in. */
const AT_HAND = [
  { step: [0.01, 0.0005], places: [2, 4], scatter: 0.006, to: 300 },
  { step: [0.01, 0.001], places: [2, 3], scatter: 0.005, to: 150 },
  { step: [0.001, 0.0001], places: [3, 4], scatter: 0.0015, to: 120 },
  { step: [0.002, 0.0001], places: [3, 4], scatter: 0.002, to: 90 },
] as const;

const HOLES = ['pump liner', 'eye of the link', 'gear hub bore', 'sluice bearing bore', 'roller bore'];
const SHAFTS = ['saw spindle', 'countershaft journal', 'plunger', 'crank pin', 'roller pin', 'gate stem'];

/**
 * A part comes in worn by up to so many bands of its limits. A slip that leaves a line nearer than that to its limits or its fit
 * leaves a part as this shop takes it in: there is nothing to tell it by, and it does not count.
 */
const MOST_WORN = 6;

const worn = (draw: Draw, band: number): number =>
  draw.chance(0.7) ? band * 0.4 * draw.wait() : band * draw.between(1, MOST_WORN);

const rangeOf = (stations: readonly (readonly string[])[]): number => {
  const all = stations.flat().map(Number);
  return Math.max(...all) - Math.min(...all);
};

class Sheet {
  readonly cells: CellRecord[] = [];
  readonly inch: boolean;
  readonly pen: Pen;
  readonly scale: number;
  /** Standard deviation of a reading, mm. */
  readonly sd: number;
  private readonly largest: number;

  constructor(readonly draw: Draw) {
    this.inch = draw.chance(0.4);
    this.scale = this.inch ? 25.4 : 1;
    const gauge = draw.of(AT_HAND);
    const which = this.inch ? 1 : 0;
    const [step, places] = [gauge.step[which], gauge.places[which]];
    this.sd = gauge.scatter * draw.between(0.5, 1.5);
    this.largest = gauge.to;
    const unit = this.inch ? 'in' : 'mm';
    const number = (value: number): string => (Math.round(value / step) * step).toFixed(places);
    const between = draw.of(['; ', ' ; ']);
    this.pen = {
      inch: this.inch,
      step,
      places,
      number,
      write: (stations) => `${stations.map((one) => one.join(between)).join(' | ')} ${unit}`,
    };
  }

  size(): number {
    return 8 * (this.largest / 8) ** this.draw.next();
  }

  add(label: string, more: Omit<Partial<CellRecord>, 'id'>): CellRecord {
    const n = this.cells.length;
    const cell = {
      id: `u${n}`,
      role: 'measured',
      quantity: 'length',
      name: `${label.replace(/\W+/g, '_')}_${'abcdefghijklmnopqrstuvwxyz'[n % 26]}x`,
      label,
      ...more,
    } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  text(mm: number): string {
    return `${(mm / this.scale).toFixed(this.inch ? 4 : 3)} ${this.inch ? 'in' : 'mm'}`;
  }

  /** Barrelled and tapered along, oval around, in step with how far it is worn. */
  read(mm: number, wear: number, most = 12): string[][] {
    const { draw, pen } = this;
    const [along, around] = draw.of([
      [1, 1],
      [1, 1],
      [1, 3],
      [2, 2],
      [3, 1],
      [3, 2],
      [1, 5],
      [2, 4],
    ] as const);
    if (along * around > most) return this.read(mm, wear, most);
    const [taper, barrel, oval] = [draw.between(-0.5, 0.5), draw.between(-0.3, 0.3), draw.between(0, 0.6)];
    return Array.from({ length: along }, (_, i) =>
      Array.from({ length: around }, (_, j) => {
        const height = along === 1 ? 0 : i / (along - 1) - 0.5;
        const form =
          taper * height +
          barrel * (4 * height ** 2 - 0.5) +
          (oval / 2) * Math.cos((2 * Math.PI * j) / around);
        const off = this.sd * draw.normal() * (draw.chance(0.04) ? 3 : 1);
        return pen.number((mm + wear * form + off) / this.scale);
      }),
    );
  }

  own(stations: string[][]): number {
    return 2 * rangeOf(stations) * this.scale + 5 * this.sd + this.pen.step * this.scale;
  }
}

type Site = Pick<Scene, 'cell' | 'field' | 'stations'> & { loose: number };
type Block = (sheet: Sheet) => Site;

const entry = (cell: CellRecord, stations: string[][], sheet: Sheet, loose: number): Site => {
  cell.entry = sheet.pen.write(stations);
  return { cell, field: 'entry', stations, loose };
};

const BLOCKS: Readonly<Record<Situation, Block>> = {
  list: (sheet) => {
    const { draw } = sheet;
    const [size, wear] = [sheet.size(), 0.03 * draw.wait()];
    let stations = sheet.read(size, wear);
    while (stations.flat().length < 3) stations = sheet.read(size, wear);
    const label = draw.of([...HOLES, ...SHAFTS]);
    const far = size * draw.between(0.02, 0.2);
    const alone = draw.chance(0.5)
      ? {}
      : draw.chance(0.5)
        ? { limits: { lower: sheet.text(size - far) } }
        : { limits: { upper: sheet.text(size + far) } };
    return entry(sheet.add(label, alone), stations, sheet, sheet.own(stations));
  },
  plan: (sheet) => {
    const { draw } = sheet;
    const size = sheet.size();
    const half = Math.max(2 * sheet.sd, sheet.pen.step * sheet.scale, size * draw.between(1e-4, 8e-4));
    const cell = sheet.add(draw.of(['shoulder', 'turned to', 'bored to', 'spacer']), {
      role: 'chosen',
      entry: sheet.text(size),
      tolerance: `± ${sheet.text(half)}`,
    });
    const miss = draw.chance(0.05) ? draw.between(1, 2) : 0.45 * draw.normal();
    const stations = sheet.read(size + half * miss, half / 4, 4);
    cell.measured = { entry: sheet.pen.write(stations) };
    return { cell, field: 'measured.entry', stations, loose: 3 * half + sheet.own(stations) };
  },
  limits: (sheet) => {
    const { draw } = sheet;
    const size = sheet.size();
    const band = Math.max(0.006, size * draw.between(2e-4, 1e-3));
    const isHole = draw.chance(0.5);
    const wear = worn(draw, band);
    const middle = size + band * draw.next() + (isHole ? wear : -wear);
    const cell = sheet.add(draw.of(isHole ? HOLES : SHAFTS), {
      limits: { lower: sheet.text(size), upper: sheet.text(size + band) },
    });
    const stations = sheet.read(middle, wear);
    return entry(cell, stations, sheet, (MOST_WORN + 2) * band + sheet.own(stations));
  },
  fit: (sheet) => {
    const { draw } = sheet;
    const size = sheet.size();
    const least = Math.max(0.008, size * draw.between(4e-4, 1.2e-3));
    const band = least * draw.between(0.7, 1.5);
    const [inside, outside] = [worn(draw, band) / 2, worn(draw, band) / 2];
    const bore = sheet.add(draw.of(HOLES), {});
    const pin = sheet.add(draw.of(SHAFTS), {});
    const room = least + band * draw.next();
    const read = sheet.read(size + room + inside, inside);
    const taken = sheet.read(size - outside, outside);
    sheet.add(draw.of(['running clearance', 'play in the eye']), {
      role: 'worked',
      entry: `= ${bore.name} - ${pin.name}`,
      limits: { lower: sheet.text(least), upper: sheet.text(least + band) },
    });
    const isBore = draw.chance(0.5);
    const loose = (MOST_WORN + 2) * band;
    if (isBore) entry(pin, taken, sheet, 0);
    else entry(bore, read, sheet, 0);
    return isBore
      ? entry(bore, read, sheet, loose + sheet.own(read))
      : entry(pin, taken, sheet, loose + sheet.own(taken));
  },
  press: (sheet) => {
    const { draw } = sheet;
    const size = Math.max(sheet.size(), 4e3 * sheet.pen.step * sheet.scale, 3e3 * sheet.sd);
    const squeeze = size * draw.between(5e-4, 1.5e-3);
    const bore = sheet.add('bore for the bush', {});
    const bush = sheet.add('bush outside', {});
    const read = sheet.read(size, 5e-5 * size);
    const taken = sheet.read(size + squeeze, 5e-5 * size);
    sheet.add('interference', { role: 'worked', entry: `= ${bush.name} - ${bore.name}` });
    const isBore = draw.chance(0.5);
    if (isBore) entry(bush, taken, sheet, 0);
    else entry(bore, read, sheet, 0);
    const loose = 0.0018 * size;
    return isBore
      ? entry(bore, read, sheet, loose + sheet.own(read))
      : entry(bush, taken, sheet, loose + sheet.own(taken));
  },
  group: (sheet) => {
    const { draw } = sheet;
    const [size, unlike] = [sheet.size(), 0.02 * draw.next() + 2 * sheet.sd];
    const label = draw.of(SHAFTS);
    const sites = Array.from({ length: draw.whole(3, 5) }, (_, i) => {
      const stations = sheet.read(size + unlike * draw.between(-0.5, 0.5), unlike / 2, 3);
      const cell = sheet.add(`${label} ${i + 1}`, { name: `${label.replace(/\W+/g, '_')}_${i + 1}` });
      return entry(cell, stations, sheet, 3 * unlike + sheet.own(stations));
    });
    return draw.of(sites);
  },
  'gauge setting': (sheet) => {
    const { draw, pen, scale } = sheet;
    const size = sheet.size();
    const count = draw.whole(4, 30) * draw.of([1, -1]);
    const unit = sheet.inch ? 'in' : 'mm';
    const setting = Math.round(size / scale / pen.step) * pen.step;
    const at = (setting + count * pen.step) * scale;
    const room = Math.abs(count) * pen.step * scale * draw.between(0.3, 0.8);
    const cell = sheet.add('bore, by the dial gauge', {
      role: 'cell',
      kind: 'gauge-setting',
      edition: 1,
      inputs: {
        set_to: `${pen.number(setting)} ${unit}`,
        divisions: `${count}`,
        division: `${pen.step} ${unit}`,
      },
      outputs: {
        size: { limits: { lower: sheet.text(at - room), upper: sheet.text(at + 0.7 * room) } },
      },
    });
    delete cell.quantity;
    return { cell, field: 'inputs.divisions', stations: [[`${count}`]], loose: 2 * room };
  },
};

const OTHERS = ['list', 'plan', 'limits', 'fit'] as const;

/** A job of several things, one of which is to go wrong. */
export function untunedScene(situation: Situation, draw: Draw): Scene {
  const sheet = new Sheet(draw);
  const before = Array.from({ length: draw.whole(0, 2) }, () => draw.of(OTHERS));
  const after = Array.from({ length: draw.whole(0, 1) }, () => draw.of(OTHERS));
  for (const one of before) BLOCKS[one](sheet);
  const site = BLOCKS[situation](sheet);
  for (const one of after) BLOCKS[one](sheet);
  const other = sheet.add('far end of the gate rod', {});
  other.entry = sheet.pen.write(sheet.read(sheet.size() * draw.of([0.7, 1.5]), 0.02));
  return {
    file: {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'untuned' },
      units: { length: sheet.inch ? 'in' : 'mm' },
      rule: draw.of(['worst-case', 'iso14253-2013', 'iso14253-2017'] as const),
      cells: sheet.cells,
    },
    situation,
    cell: site.cell,
    field: site.field,
    pen: sheet.pen,
    stations: site.stations,
    loose: site.loose / sheet.scale,
    other: other.entry,
  };
}
