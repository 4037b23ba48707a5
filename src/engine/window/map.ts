import type { CellRecord } from '../../../shared/sheet/format.ts';
import { type CheckBelow, type CheckName, checksBelow, isJudged, stoodOf } from '../trial/checks.ts';
import { freeRow } from '../trial/path.ts';
import type { InputPlace } from '../trial/place.ts';
import type { TrialSheet } from '../trial/trial-sheet.ts';
import type { CheckSaid } from './answer.ts';
import { type Movable, movableOf } from './input.ts';
import { mapValue } from './map-value.ts';
import { placesFor, type Range } from './range.ts';
import { roughly } from './roughly.ts';
import { Sweep } from './sweep.ts';
import { lookFor, valueNow } from './window.ts';

export interface MapAsked {
  across: InputPlace;
  up: InputPlace;
  /** Cells each way; 40 where absent, 64 at most. */
  size?: number;
}

/** One side of a map. */
export interface MapSide {
  place: InputPlace;
  name: string;
  unit: string;
  places: number;
  range: Range;
  value?: number;
}

/** Where two inputs may stand together. */
export interface MapFound {
  is: 'found';
  across: MapSide;
  up: MapSide;
  size: number;
  /**
   * Row by row from the lowest of `up`, each at the middle of its cell: -1 where every check holds by corners, else the number
   * of the first check that does not.
   */
  cells: Int16Array;
  checks: CheckName[];
  /** Checks that hold nowhere on the map. */
  leftOut: CheckSaid[];
}

interface NoMap {
  is: 'none';
  why: string;
}

export type MapAnswer = MapFound | NoMap;

const SIZE = 40;
const MOST = 64;

/**
 * Where two inputs may stand together with every check below either of them holding: each cell at its middle, by the corners
 * that are the worst as the sheet stands, and not by the sheet worked out in full.
 */
export function mapOf(
  trial: TrialSheet,
  asked: MapAsked,
  onProgress: (done: number, of: number) => void = () => {},
): MapAnswer {
  const none = (why: string): MapAnswer => ({ is: 'none', why });
  const inputs = [asked.across, asked.up].map((place) => movableOf(trial, place));
  const [a, b] = inputs;
  if (!a || !b) return none('A map has two inputs.');
  for (const one of [a, b]) if ('why' in one) return none(one.why);
  if (asked.across.cell === asked.up.cell && asked.across.field === asked.up.field)
    return none('A map has two inputs: choose another for the second.');
  try {
    return new Mapped(trial, a as Movable, b as Movable, Math.min(MOST, asked.size ?? SIZE)).run(onProgress);
  } finally {
    trial.putBack();
  }
}

/** One record with both inputs in it, where they are of one line. */
const both = (a: CellRecord, b: CellRecord, { place }: Movable): CellRecord[] => {
  if (a.id !== b.id) return [a, b];
  const name = place.field.slice('inputs.'.length);
  return [{ ...b, inputs: { ...b.inputs, [name]: a.inputs?.[name] ?? '' } }];
};

class Mapped {
  private readonly order: string[];

  constructor(
    private readonly trial: TrialSheet,
    private readonly a: Movable,
    private readonly b: Movable,
    private readonly size: number,
  ) {
    this.order = trial.sheet.cells.map(({ id }) => id);
  }

  run(onProgress: (done: number, of: number) => void): MapAnswer {
    const { trial, a, b, size } = this;
    const none = (why: string): MapAnswer => ({ is: 'none', why });
    const sides = [a, b].map((one) => lookFor(trial, one, valueNow(trial, one)));
    const [lookA, lookB] = sides;
    if (!lookA || !lookB)
      return none(
        `"${(lookA ? b : a).name}" has no value yet, and nothing tells where to look: give it one.`,
      );
    const values = [a, b].map((one) => valueNow(trial, one));
    const [recordA, recordB] = [a.put(lookA.about), b.put(lookB.about)];
    if (!recordA || !recordB) return none('One of the two cannot be written as another value.');
    trial.put(...both(recordA, recordB, a));
    if (trial.isSettling) trial.settle();
    const computed = trial.computed();
    const [freeA, freeB] = [freeRow(computed, a.key), freeRow(computed, b.key)];
    const checks = checksBelow(computed, [a.key, b.key], this.order, trial.sheet.rule).filter((check) =>
      isJudged(check, trial.result(check.cell)),
    );
    if (!freeA || !freeB || checks.length === 0)
      return none(`No check depends on "${a.name}" or "${b.name}".`);
    const said = new Map(checks.map((check) => [check, stoodOf(check, trial.result(check.cell))]));
    const rangeOf = (free: typeof freeA, key: Movable, look: { range: Range; about: number }): Range => {
      const own = new Set(checksBelow(computed, [key.key], this.order, trial.sheet.rule).map(nameOf));
      return around(
        roughly(
          computed,
          free,
          look.range,
          look.about,
          checks.filter((check) => own.has(nameOf(check))),
        ).pieces,
        look,
      );
    };
    const across = sideOf(a, values[0], rangeOf(freeA, a, lookA));
    const up = sideOf(b, values[1], rangeOf(freeB, b, lookB));
    const sweep = new Sweep(computed, [freeA, freeB], checks);
    const xs = Float64Array.from({ length: size }, (_, i) => mapValue(across, i, size));
    const ys = new Float64Array(size);
    /** By check and cell. */
    const held = checks.map(() => new Uint8Array(size * size));
    for (let row = 0; row < size; row++) {
      ys.fill(mapValue(up, row, size));
      const found = sweep.run([xs, ys], size);
      sweep.ofCheck.forEach((conditions, c) => {
        const own = held[c] as Uint8Array;
        for (let i = 0; i < size; i++)
          own[row * size + i] = conditions.every((one) => found[one]?.[i] === 1) ? 1 : 0;
      });
      onProgress(row + 1, size);
    }
    const counted = checks.filter((_, c) => held[c]?.includes(1));
    const leftOut = checks.filter((_, c) => !held[c]?.includes(1));
    if (counted.length === 0)
      return none(`None of the ${checks.length} checks that depend on them holds anywhere on the map.`);
    const cells = new Int16Array(size * size);
    for (let i = 0; i < cells.length; i++)
      cells[i] = counted.findIndex((check) => held[checks.indexOf(check)]?.[i] !== 1);
    return {
      is: 'found',
      across,
      up,
      size,
      cells,
      checks: counted.map(named),
      leftOut: leftOut.map((check) => ({ ...named(check), words: said.get(check)?.words ?? 'waiting' })),
    };
  }
}

/** The piece that holds the present value, or the nearest, and half as far again each way. */
function around(
  pieces: readonly { low: number; high: number }[],
  { range, about }: { range: Range; about: number },
): Range {
  const far = ({ low, high }: Range): number => Math.max(low - about, about - high, 0);
  const piece = [...pieces].sort((a, b) => far(a) - far(b))[0] ?? range;
  const half = (piece.high - piece.low) / 2;
  const low = Math.max(range.low, Math.min(piece.low - half, about));
  const high = Math.min(range.high, Math.max(piece.high + half, about));
  return high > low ? { low, high } : range;
}

const sideOf = (input: Movable, value: number | undefined, range: Range): MapSide => ({
  place: input.place,
  name: input.name,
  unit: input.unit.symbol,
  places: placesFor(range.high - range.low, input.unit),
  range,
  ...(value === undefined ? {} : { value }),
});

const named = ({ cell, output, as }: CheckBelow): CheckName => ({ cell, output, as });
const nameOf = ({ cell, output, as }: CheckName): string => `${cell}\n${output}\n${as}`;
