import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { Draw } from './draw.ts';

/** A reading on a sheet that is right, with what it takes to write it wrong. */
export interface Site {
  cell: string;
  /** Part of the cell it stands in. */
  field: 'entry' | 'measured.entry';
  /** Readings in the unit of the sheet, by station; rounded as they are written. */
  stations: number[][];
  /** Written as divisions of a gauge about this setting. */
  set?: number;
  /** What bears it out. */
  beside: 'plan' | 'limits' | 'pair';
  /** How far one alone may lie from where it ought to, by its wear and by the width of what bears it out; in the unit. */
  loose: number;
}

export interface CleanSheet {
  file: SheetFile;
  sites: Site[];
  /** Number of readings on it. */
  readings: number;
}

/** Everything of one sheet in its own unit. */
export interface System {
  unit: 'in' | 'mm';
  /** Millimetres to the unit. */
  scale: number;
  places: number;
}

const SYSTEMS: readonly System[] = [
  { unit: 'in', scale: 1 / 25.4, places: 4 },
  { unit: 'mm', scale: 1, places: 3 },
];

/** How a shop's parts and readings are: sizes, wear and scatter, mm. */
export interface Habits {
  /** A nominal size. */
  nominal(draw: Draw): number;
  /** Mean wear of the parts of one job. */
  wear(draw: Draw): number;
  /** Wear of one part beside that mean. */
  share(draw: Draw): number;
  /** Number of stations along a surface and of readings around it. */
  table(draw: Draw): [along: number, around: number];
  /** Form of a worn surface: what a reading differs from the mean of its surface, in units of its wear. */
  form(draw: Draw, along: number, around: number): (i: number, j: number) => number;
  /** Error of one reading. */
  error(draw: Draw, system: System): number;
  /** Share of the readings counted from a setting. */
  counted: number;
  /** What a cut misses its aim by, in units of its tolerance. */
  cut(draw: Draw): number;
}

/** Usual wear by class of job, mm, and how often: from hardly run in to run to death. */
const WEAR = [
  [0.01, 0.35],
  [0.04, 0.35],
  [0.12, 0.2],
  [0.3, 0.1],
] as const;

const usualWear = (draw: Draw): number => {
  let left = draw.next();
  for (const [mean, share] of WEAR) {
    left -= share;
    if (left < 0) return mean;
  }
  return WEAR[0][0];
};

/** A shop for machines of a hand's breadth: taper and ovality in step with wear, one cut in seven beyond its tolerance. */
const USUAL: Habits = {
  nominal: (draw) => (draw.chance(0.7) ? draw.whole(15, 90) : draw.between(12, 110)),
  wear: usualWear,
  share: (draw) => draw.wait(),
  table: (draw) => [draw.of([1, 1, 2, 3]), draw.of([1, 1, 2, 2, 4])],
  form: (draw, along) => {
    const [taper, oval] = [draw.between(0, 0.4), draw.between(0, 0.5)];
    return (i, j) => taper * (i / along - 0.4) + (oval / 2) * (j % 2 ? 1 : -1);
  },
  error: (draw, { unit }) => (unit === 'in' ? 0.002 : 0.0012) * draw.normal(),
  counted: 0.25,
  cut: (draw) => (draw.chance(0.85) ? 1 / 3 : 1.5) * draw.normal(),
};

/** Readings as they are written: `2.2516; 2.2514 | 2.2512 in`, or divisions about a setting. */
export function writeReadings(
  stations: readonly (readonly number[])[],
  system: System,
  set?: number,
): string {
  const { unit, places } = system;
  const list = (write: (value: number) => string): string =>
    stations.map((station) => station.map(write).join('; ')).join(' | ');
  if (set === undefined) return `${list((value) => value.toFixed(places))} ${unit}`;
  const division = 10 ** -places;
  const count = (value: number): string => {
    const n = Math.round((value - set) / division);
    return n < 0 ? String(n) : `+${n}`;
  };
  return `set ${set.toFixed(places)} ${unit}, ${list(count)} div of ${division.toFixed(places)} ${unit}`;
}

/**
 * A repair sheet without a slip: worn bores and journals as found, with taper and out-of-round as wear makes them,
 * makers' limits, sizes cut to a plan and measured, fits between them, and the odd fraction, class and undersize.
 * Some parts are worn far beyond any limit, and one cut in seven misses its tolerance.
 */
class SheetMaker {
  readonly cells: CellRecord[] = [];
  readonly sites: Site[] = [];
  readonly system: System;
  private readonly mean: number;

  constructor(
    readonly draw: Draw,
    private readonly habits: Habits,
  ) {
    this.system = draw.of(SYSTEMS);
    this.mean = habits.wear(draw);
  }

  private add(record: Omit<CellRecord, 'id'>): CellRecord {
    const cell = { id: `c${this.cells.length}`, ...record } as CellRecord;
    this.cells.push(cell);
    return cell;
  }

  private size(mm: number): number {
    return Number((mm * this.system.scale).toFixed(this.system.places));
  }

  private text(value: number): string {
    return `${value.toFixed(this.system.places)} ${this.system.unit}`;
  }

  private read(
    cell: CellRecord,
    field: Site['field'],
    stations: number[][],
    beside: Site['beside'],
    loose: number,
  ): string {
    const { draw, system } = this;
    const counted = draw.chance(this.habits.counted);
    const middle = stations[0]?.[0] as number;
    const setting = Number(middle.toFixed(system.unit === 'in' ? 2 : 1));
    const set = counted && Math.abs(middle - setting) < 100 * 10 ** -system.places ? setting : undefined;
    this.sites.push({
      cell: cell.id,
      field,
      stations,
      beside,
      loose: loose * this.system.scale,
      ...(set === undefined ? {} : { set }),
    });
    return writeReadings(stations, system, set);
  }

  /** Readings of a surface about a mean size, mm: its form in step with its wear. */
  private readings(mean: number, wear: number): number[][] {
    const { draw, habits } = this;
    const [along, around] = habits.table(draw);
    const form = habits.form(draw, along, around);
    return Array.from({ length: along }, (_, i) =>
      Array.from({ length: around }, (_, j) =>
        this.size(mean + wear * form(i, j) + habits.error(draw, this.system)),
      ),
    );
  }

  /** One worn joint: bore and journal as found, limits, what is cut and what came out. */
  joint(i: number): void {
    const { draw } = this;
    const { habits } = this;
    const nominal = habits.nominal(draw);
    const least = nominal * draw.between(0.0006, 0.0015) + 0.01;
    const band = nominal * draw.between(0.0004, 0.001) + 0.01;
    const grade = draw.between(0.01, 0.03);
    const shaft = nominal - draw.between(0, grade);
    const bore = shaft + least + draw.between(0, band);
    const [boreWear, shaftWear] = [this.mean * habits.share(draw), this.mean * 0.6 * habits.share(draw)];
    const worn = band + boreWear + shaftWear;
    const limited = draw.chance(0.6);

    const journal = this.add({ role: 'measured', name: `journal_${i}`, quantity: 'length' });
    if (limited)
      journal.limits = {
        lower: this.text(this.size(nominal - grade)),
        upper: this.text(this.size(nominal)),
        ...(draw.chance(0.5) ? { metalOn: 'high' as const } : {}),
      };
    const found = this.readings(shaft - shaftWear, shaftWear);
    journal.entry = this.read(
      journal,
      'entry',
      found,
      limited ? 'limits' : 'pair',
      limited ? grade + shaftWear : worn,
    );

    const hole = this.add({ role: 'measured', name: `bush_bore_${i}`, quantity: 'length' });
    hole.entry = this.read(hole, 'entry', this.readings(bore + boreWear, boreWear), 'pair', worn);

    this.add({
      role: 'worked',
      name: `running_clearance_${i}`,
      quantity: 'length',
      entry: `= bush_bore_${i} - journal_${i}`,
      limits: {
        lower: this.text(this.size(least)),
        upper: this.text(this.size(least + band)),
        ...(draw.chance(0.5) ? { wear: this.text(this.size(least + 3 * band)) } : {}),
      },
    });
    this.bush(i, nominal + draw.between(6, 14));
  }

  /** A bush made to a housing: housing measured, outside chosen and measured after turning, interference worked out. */
  private bush(i: number, across: number): void {
    const { draw } = this;
    const wear = this.mean * 0.2 * this.habits.share(draw);
    const housing = this.add({
      role: 'measured',
      name: `housing_${i}`,
      label: 'housing bore',
      quantity: 'length',
    });
    const stations = this.readings(across + wear, wear);
    housing.entry = this.read(housing, 'entry', stations, 'pair', 0.0017 * across + wear);
    const mean = stations.flat().reduce((a, b) => a + b, 0) / stations.flat().length;
    const squeeze = this.size(across * draw.between(0.0006, 0.0014));
    const tolerance = Math.max(squeeze * draw.between(0.1, 0.3), 10 ** -this.system.places);
    const band = Number(tolerance.toFixed(this.system.places));
    const plan = Number((mean + squeeze).toFixed(this.system.places));
    const outside = this.add({
      role: 'chosen',
      name: `bush_outside_${i}`,
      quantity: 'length',
      entry: draw.chance(0.5) ? `= housing_${i} + ${this.text(squeeze)}` : this.text(plan),
      tolerance: `± ${this.text(band)}`,
    });
    this.cut(outside, mean + squeeze, band);
    this.add({
      role: 'worked',
      name: `interference_${i}`,
      quantity: 'length',
      entry: `= bush_outside_${i} - housing_${i}`,
    });
  }

  /** What a cut came out at: near the aim, but one in seven misses its tolerance. */
  private cut(cell: CellRecord, aim: number, tolerance: number): void {
    const value = Number((aim + tolerance * this.habits.cut(this.draw)).toFixed(this.system.places));
    cell.measured = { entry: '' };
    cell.measured.entry = this.read(
      cell,
      'measured.entry',
      [[value]],
      'plan',
      (2 * tolerance) / this.system.scale,
    );
  }

  /** Sizes typed as a shop writes them: a fraction, an undersize, a class, a cut to a plain size. */
  odds(i: number): void {
    const { draw, system } = this;
    const inches = system.unit === 'in';
    const whole = draw.whole(1, 4);
    const below = draw.of([1, 3, 5, 7]);
    this.add({
      role: 'given',
      name: `width_${i}`,
      quantity: 'length',
      entry: inches ? `${whole} ${below}/8 in` : `${10 * whole + below} mm`,
    });
    this.add({
      role: 'chosen',
      name: `undersize_${i}`,
      label: 'journal, ground to',
      quantity: 'length',
      entry: inches ? `${draw.of([10, 20, 30])} thou under` : `${draw.of([0.25, 0.5, 0.75])} mm under`,
    });
    const bored = draw.chance(0.5);
    this.add({
      role: 'chosen',
      name: `${bored ? 'seat_bore' : 'stub_shaft'}_${i}`,
      quantity: 'length',
      entry: `${draw.whole(12, 80)} mm ${bored ? draw.of(['H6', 'H7', 'G7']) : draw.of(['h6', 'g6', 'k6'])}`,
    });
    const plan = this.size(draw.between(10, 120));
    const tolerance = this.size(draw.between(0.01, 0.1));
    const face = this.add({
      role: 'chosen',
      name: `length_${i}`,
      quantity: 'length',
      entry: this.text(plan),
      tolerance: `± ${this.text(tolerance)}`,
    });
    this.cut(face, plan, tolerance);
  }

  finish(): CleanSheet {
    const file: SheetFile = {
      format: 'fitwright-sheet',
      version: 2,
      title: { title: 'synthetic' },
      units: { length: this.system.unit },
      rule: 'worst-case',
      cells: this.cells,
    };
    const readings = this.sites.reduce((n, site) => n + site.stations.flat().length, 0);
    return { file, sites: this.sites, readings };
  }
}

export function cleanSheet(draw: Draw, habits: Habits = USUAL): CleanSheet & { system: System } {
  const maker = new SheetMaker(draw, habits);
  const joints = draw.whole(1, 2);
  for (let i = 0; i < joints; i++) maker.joint(i);
  maker.odds(joints);
  return { ...maker.finish(), system: maker.system };
}
