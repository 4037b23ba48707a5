import { createSignal, untrack } from 'solid-js';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { CellResult } from '../../engine/rows/results.ts';
import { keepEqual } from '../kit/keep-equal.ts';
import type { Move } from './moves.ts';
import { sameShape } from './shape.ts';

/** One cell as the page shows it. Plain values, never changed in place: parts that stay equal stay the same objects. */
export interface Line {
  readonly record: CellRecord;
  /** Absent until the engine has answered for it. */
  readonly result: CellResult | undefined;
  /** What the last edit did, by output. */
  readonly moved: Moved;
  /** The two together: whoever needs both depends on one thing. */
  readonly figures: Figures;
  /**
   * A result of the same shape, words and verdicts as the present one, its figures perhaps those of before. Whoever asks
   * for it instead of the result is not asked again by an edit that moves figures only, which is what most edits do.
   */
  readonly shape: CellResult | undefined;
  /**
   * Has `write` told of every change of the figures ahead of everything that depends on them: for what does nothing but write
   * them down. Gives what stops it.
   */
  onFigures(write: (figures: Figures) => void): () => void;
}

export type Moved = Readonly<Record<string, Move>>;

export interface Figures {
  readonly result: CellResult | undefined;
  readonly moved: Moved;
}

const UNMOVED: Moved = {};
const NONE: Figures = { result: undefined, moved: UNMOVED };

/** Three signals a line: a store that follows every field of a result costs ten times what drawing the figures does. */
const createSlot = () => {
  const [record, setRecord] = createSignal<CellRecord>();
  const [figures, setFigures] = createSignal(NONE);
  const [shape, setShape] = createSignal<CellResult>();
  const writers = new Set<(figures: Figures) => void>();
  const line: Line = {
    get record() {
      return record()!;
    },
    get result() {
      return figures().result;
    },
    get moved() {
      return figures().moved;
    },
    get figures() {
      return figures();
    },
    get shape() {
      return shape();
    },
    onFigures: (write) => {
      writers.add(write);
      return () => writers.delete(write);
    },
  };
  return { line, record, setRecord, figures, setFigures, shape, setShape, writers };
};

type Slot = ReturnType<typeof createSlot>;

/** The lines of a sheet by cell. Changes belong in a batch. */
export const createLines = () => {
  const slots = new Map<string, Slot>();
  const moved = new Set<string>();
  /** Figures that are written down and have not been made known yet. */
  const written = new Map<Slot, Figures>();
  const write = (slot: Slot, figures: Figures): void => {
    written.set(slot, figures);
    // The first ones wait for their shape, which tells the unit they are written in.
    if (untrack(slot.shape)) for (const one of slot.writers) one(figures);
  };
  const slotOf = (id: string) => {
    let slot = slots.get(id);
    if (!slot) {
      slot = createSlot();
      slots.set(id, slot);
    }
    return slot;
  };
  return {
    get: (id: string): Line | undefined => {
      const slot = slotOf(id);
      return slot.record() ? slot.line : undefined;
    },
    /** What is known of a cell, on a line or not yet. */
    resultOf: (id: string): CellResult | undefined => untrack(slotOf(id).figures).result,
    /** Takes the record over: it must be nobody else's. */
    setRecord: (id: string, record: CellRecord): void => {
      const slot = slotOf(id);
      slot.setRecord(keepEqual(untrack(slot.record), record));
    },
    remove: (id: string): void => {
      const slot = slotOf(id);
      slot.setRecord(undefined);
      slot.setFigures(NONE);
      slot.setShape(undefined);
      moved.delete(id);
    },
    /** Has a result written down where its line is drawn; {@link settle} makes it known. */
    write: (result: CellResult, moves: Moved | undefined): void => {
      write(slotOf(result.id), { result, moved: moves ?? UNMOVED });
      if (moves) moved.add(result.id);
      else moved.delete(result.id);
    },
    /** Takes off the lines what the edit before did, but for some, in the same way. */
    dropMoves: (but: ReadonlySet<string>): void => {
      for (const id of moved) {
        if (but.has(id)) continue;
        moved.delete(id);
        const slot = slotOf(id);
        write(slot, { result: untrack(slot.figures).result, moved: UNMOVED });
      }
    },
    /** Makes known what was written. @returns whether more than figures has changed. */
    settle: (): boolean => {
      let more = false;
      for (const [slot, figures] of written) {
        if (!untrack(slot.record)) continue;
        const before = untrack(slot.figures).result;
        slot.setFigures(figures);
        const { result } = figures;
        if (!result || (before && sameShape(before, result))) continue;
        slot.setShape(result);
        more = true;
      }
      written.clear();
      return more;
    },
  };
};
