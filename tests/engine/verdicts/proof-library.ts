import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Dice } from './oracle.ts';

/** What a number is to proof, by the guide of verdicts. */
export type Standing = 'measured' | 'planned' | 'model' | 'free';

export interface Value {
  is: Standing;
  at: number;
  /** Where it may be. */
  low: number;
  high: number;
}

export type At = (v: readonly number[]) => number;

export interface Length {
  text: string;
  at: At;
}

/** `made` gives it anew, with values of its own. */
export interface Ratio {
  text: string;
  at: () => number;
  made: () => At;
}

/**
 * What a sheet takes of the library, each output as typed beside the same in plain doubles: sizes a table gives for a choice,
 * for a choice of another line and for a size; what follows by geometry and by a model; what is held; and lists of readings.
 * A size of a table is one of a part still to be made.
 */

interface Shelf {
  dice: Dice;
  cells: CellRecord[];
  /** Lengths a line may name; the plain lines alone are 10 to 21 mm. */
  lengths: Length[];
  ratios: Ratio[];
  figures: Map<string, At>;
  add(value: Value): At;
  fixed(is: Standing, at: number): At;
}

const WIDE = { lower: '-1e7 mm', upper: '1e7 mm' };
const BARE = { lower: '-1e7', upper: '1e7' };

/** ISO 724 and ASME B1.1: basic major diameter and pitch. */
const THREADS = [
  ['M8x1.25', 0.008, 0.00125],
  ['M12x1.75', 0.012, 0.00175],
  ['1/2-13 UNC', 0.0127, 0.0254 / 13],
] as const;

/** ISO/R 773: depth of the seat in the shaft, by the diameter up to which it is cut. */
const SEATS = [
  [0.012, 0.0025],
  [0.017, 0.003],
  [0.022, 0.0035],
] as const;

const shelves: readonly ((shelf: Shelf, name: string) => void)[] = [
  // A thread, chosen here or where another line chose it.
  ({ dice, cells, lengths, fixed }, name) => {
    const [thread, major, pitch] = dice.of(THREADS);
    const own = `${name}t`;
    const inputs = (text: string) => ({ thread: text });
    cells.push({ id: own, name: own, role: 'cell', kind: 'thread-limits', inputs: inputs(thread) });
    const isTaken = dice.to(2) === 0;
    if (isTaken)
      cells.push({
        id: name,
        name,
        role: 'cell',
        kind: 'thread-limits',
        inputs: inputs(`= ${own}.thread`),
      });
    const from = isTaken ? name : own;
    lengths.push({ text: `${from}.major`, at: fixed('planned', major) });
    lengths.push({ text: `${from}.pitch`, at: fixed('planned', pitch) });
  },
  // The key that goes with a shaft.
  ({ dice, cells, lengths, figures, fixed }, name) => {
    const shaft = dice.of(lengths);
    const seat = fixed('planned', 1);
    const seatOf = (d: number): number => (SEATS.find(([upTo]) => d <= upTo) ?? SEATS[2])[1];
    const over: At = (v) => shaft.at(v) - seat(v) * seatOf(shaft.at(v));
    cells.push({
      id: name,
      name,
      role: 'cell',
      kind: 'key-size',
      inputs: { shaft: shaft.text, system: 'metric' },
      outputs: { over_seat: { limits: WIDE } },
    });
    lengths.push({ text: `${name}.over_seat`, at: over });
    figures.set(`${name}.over_seat`, over);
  },
  // A wall, by readings typed in its cell and a bore that is named or typed.
  ({ dice, cells, lengths, figures, add, fixed }, name) => {
    const isTyped = dice.to(4) === 0;
    const bore = dice.of(lengths);
    const boreAt = isTyped ? fixed('planned', 0.012) : bore.at;
    const outside = add({ is: 'measured', at: 0.03, low: 0.02999, high: 0.03001 });
    const offset = add({ is: 'measured', at: 0.0001, low: 0.00009, high: 0.00011 });
    const wall: At = (v) => (outside(v) - boreAt(v)) / 2 - offset(v);
    cells.push({
      id: name,
      name,
      role: 'cell',
      kind: 'wall-left',
      inputs: {
        outside: '30 mm ± 10 um',
        offset: '0.1 mm ± 10 um',
        bore: isTyped ? '12 mm' : bore.text,
      },
      outputs: { thinnest: { limits: WIDE } },
    });
    lengths.push({ text: `${name}.thinnest`, at: wall });
    figures.set(`${name}.thinnest`, wall);
  },
  // A taper: a ratio of three lengths.
  ({ dice, cells, ratios, figures, add }, name) => {
    const apart = dice.of([0.05, 0.1]);
    const long = add({ is: 'measured', at: apart, low: apart - 1e-5, high: apart + 1e-5 });
    const large = add({ is: 'measured', at: 0.02, low: 0.01999, high: 0.02001 });
    const small = add({ is: 'measured', at: 0.015, low: 0.01499, high: 0.01501 });
    const taper: At = (v) => (large(v) - small(v)) / long(v);
    cells.push({
      id: name,
      name,
      role: 'cell',
      kind: 'taper-two-diameters',
      inputs: { large: '20 mm ± 10 um', small: '15 mm ± 10 um', apart: `${apart * 1000} mm ± 10 um` },
      outputs: { taper: { limits: BARE } },
    });
    ratios.push({ text: `${name}.taper`, at: () => 0.005 / apart, made: () => taper });
    figures.set(`${name}.taper`, taper);
  },
  // A clearance, and the size a hole cleans up at, which is held.
  ({ dice, cells, lengths, figures }, name) => {
    const [a, b] = [dice.of(lengths), dice.of(lengths)];
    const clearance: At = (v) => a.at(v) - b.at(v);
    cells.push({
      id: name,
      name,
      role: 'cell',
      kind: 'running-clearance',
      inputs: { bore: a.text, journal: b.text, bore_least: a.text, bore_greatest: a.text },
      outputs: { clearance: { limits: WIDE } },
    });
    lengths.push({ text: `${name}.clearance`, at: clearance });
    figures.set(`${name}.clearance`, clearance);
  },
  ({ cells, lengths, figures, fixed }, name) => {
    cells.push({
      id: name,
      name,
      role: 'cell',
      kind: 'bore-clean-up',
      inputs: {
        greatest: '20.1 mm ± 10 um',
        offset: '0.05 mm ± 10 um',
        skin: '0.1 mm',
        new_size: '20 mm',
      },
      outputs: { bored_size: { limits: WIDE } },
    });
    const held = fixed('planned', 0.0203);
    lengths.push({ text: `${name}.bored_size`, at: held });
    figures.set(`${name}.bored_size`, held);
  },
  // What grows by a model, and comes back to reference temperature as a reading does.
  ({ dice, cells, lengths, figures, fixed }, name) => {
    const size = dice.of(lengths);
    const iron = `${name}m`;
    cells.push({ id: iron, name: iron, role: 'cell', kind: 'material', inputs: { material: 'c93200' } });
    cells.push({
      id: name,
      name,
      role: 'cell',
      kind: 'linear-expansion',
      inputs: { size: size.text, temperature: '20 degC', material: iron },
      outputs: { size_at_reference: { limits: WIDE }, size_at_temperature: { limits: WIDE } },
    });
    // Of no size at all the cell gives nothing.
    const model = fixed('model', 1);
    const warm: At = (v) => size.at(v) * model(v);
    lengths.push({ text: `${name}.size_at_temperature`, at: warm });
    lengths.push({ text: `${name}.size_at_reference`, at: size.at });
    figures.set(`${name}.size_at_temperature`, warm);
    figures.set(`${name}.size_at_reference`, size.at);
  },
  // A part read at two places in two directions: its mean, its least and greatest, its form.
  ({ dice, cells, lengths, add }, name) => {
    const at = 0.01 + dice.to(10) * 0.001;
    const mm = (x: number): string => (at * 1000 + x).toFixed(3);
    cells.push({
      id: name,
      name,
      role: 'measured',
      quantity: 'length',
      entry: `${mm(0)}; ${mm(0.01)} | ${mm(0.02)}; ${mm(0.05)} mm ± 2 um`,
    });
    const read = (text: string, size: number): void => {
      lengths.push({ text, at: add({ is: 'measured', at: size, low: size - 1e-5, high: size + 1e-5 }) });
    };
    read(name, at + 20e-6);
    read(`${name}.least`, at);
    read(`${name}.greatest`, at + 50e-6);
    read(`${name}.taper`, 30e-6);
  },
];

export function takeFromLibrary(shelf: Shelf): void {
  const count = shelf.dice.to(4);
  for (let i = 0; i < count; i++) shelf.dice.of(shelves)(shelf, `k${i}`);
}
