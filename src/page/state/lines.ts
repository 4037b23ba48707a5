import { createSignal, untrack } from 'solid-js';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { CellResult } from '../../engine/results.ts';
import { keepEqual } from './keep-equal.ts';
import type { Move } from './moves.ts';
import { keepOutline } from './outline.ts';

/** One cell as the page shows it. Plain values, never changed in place: parts that stay equal stay the same objects. */
export interface Line {
  readonly record: CellRecord;
  /** Absent until the engine has answered for it. */
  readonly result: CellResult | undefined;
  /**
   * A result of the same shape, words and verdicts as the present one, its figures perhaps those of before. Whoever asks
   * for it instead of the result is not asked again by an edit that moves figures only, which is what most edits do.
   */
  readonly outline: CellResult | undefined;
  /** What the last edit did, by output. */
  readonly moved: Readonly<Record<string, Move>>;
}

const UNMOVED: Readonly<Record<string, Move>> = {};

/** Four signals a line: a store that follows every field of a result costs ten times what drawing the figures does. */
const createSlot = () => {
  const [record, setRecord] = createSignal<CellRecord>();
  const [result, setResult] = createSignal<CellResult>();
  const [outline, setOutline] = createSignal<CellResult>();
  const [moved, setMoved] = createSignal(UNMOVED);
  const line: Line = {
    get record() {
      return record()!;
    },
    get result() {
      return result();
    },
    get outline() {
      return outline();
    },
    get moved() {
      return moved();
    },
  };
  return { line, record, setRecord, result, setResult, outline, setOutline, moved, setMoved };
};

/** The lines of a sheet by cell. Changes belong in a batch. */
export const createLines = () => {
  const slots = new Map<string, ReturnType<typeof createSlot>>();
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
    /** Takes the record over: it must be nobody else's. */
    setRecord: (id: string, record: CellRecord): void => {
      const slot = slotOf(id);
      slot.setRecord(keepEqual(untrack(slot.record), record));
    },
    remove: (id: string): void => {
      const slot = slotOf(id);
      slot.setRecord(undefined);
      slot.setResult(undefined);
      slot.setOutline(undefined);
      slot.setMoved(UNMOVED);
    },
    /**
     * Takes the result over: it must be nobody else's.
     * @returns whether more than figures has changed.
     */
    setResult: (now: CellResult): boolean => {
      const slot = slotOf(now.id);
      const before = untrack(slot.result);
      const same = before !== undefined && keepOutline(before, now);
      slot.setResult(now);
      if (!same) slot.setOutline(now);
      return !same;
    },
    setMoved: (id: string, moves: Readonly<Record<string, Move>> | undefined): void => {
      slotOf(id).setMoved(moves ?? UNMOVED);
    },
    /** Cells on which the last edit has left its mark. */
    movedIds: (): string[] =>
      [...slots].filter(([, { moved }]) => untrack(moved) !== UNMOVED).map(([id]) => id),
  };
};
