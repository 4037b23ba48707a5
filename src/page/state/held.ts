import { createSignal } from 'solid-js';
import type { CheckState } from '../../../shared/checks/check.ts';
import { leading } from '../kit/check-words.ts';
import { readKept, writeKept } from '../kit/kept.ts';
import { standingFigure } from './moves.ts';
import type { Sheet } from './sheet.ts';

/** One output as it stood when the figures were held. */
interface HeldOutput {
  /** SI; absent where it had no figure. */
  value?: number;
  check: CheckState;
}

export interface HeldFigures {
  /** When, in ms since 1970. */
  at: number;
  /** By cell id and output. */
  outputs: Record<string, Record<string, HeldOutput>>;
}

export interface HeldChange {
  from?: number;
  to?: number;
  /** The verdict then, where it is another now. */
  check?: CheckState;
}

const snapshot = (sheet: Sheet): HeldFigures['outputs'] =>
  Object.fromEntries(
    sheet.state.order.flatMap((id) => {
      const outputs = Object.entries(sheet.line(id)?.result?.outputs ?? {}).map(([name, output]) => {
        const value = standingFigure(output)?.value;
        return [name, { check: leading(output.check).state, ...(value !== undefined && { value }) }] as const;
      });
      return outputs.length > 0 ? [[id, Object.fromEntries(outputs)] as const] : [];
    }),
  );

const isHeld = (kept: unknown): kept is HeldFigures =>
  typeof kept === 'object' && kept !== null && 'at' in kept && 'outputs' in kept;

/** Smaller differences are the noise of the last bits, not a change. */
const same = (a: number | undefined, b: number | undefined): boolean =>
  a === b ||
  (a !== undefined && b !== undefined && Math.abs(a - b) <= 1e-12 * Math.max(Math.abs(a), Math.abs(b)));

/**
 * Figures held to compare with for as long as the user likes. They lie beside the sheet, in this browser, never in it:
 * two people may hold different ones.
 */
export const createHeld = (sheet: Sheet, id: string) => {
  const key = `held.${id}`;
  const kept = readKept(key);
  const [held, setHeld] = createSignal<HeldFigures | undefined>(isHeld(kept) ? kept : undefined);
  const put = (figures: HeldFigures | undefined) => {
    setHeld(figures);
    writeKept(key, figures);
  };
  /** @returns what has changed since; nothing where nothing is held, or the output is as it was. */
  const changeOf = (cell: string, output: string): HeldChange | undefined => {
    const figures = held();
    // Where nothing is held nobody depends on the figures.
    const now = figures && sheet.output(cell, output);
    if (!figures || !now) return undefined;
    // An id may be a name that every object has.
    const was = Object.hasOwn(figures.outputs, cell) ? figures.outputs[cell]?.[output] : undefined;
    const to = standingFigure(now)?.value;
    const state = leading(now.check).state;
    if (!was) return to === undefined ? undefined : { to };
    const check = was.check === state ? undefined : was.check;
    if (same(was.value, to) && check === undefined) return undefined;
    return {
      ...(was.value !== undefined && { from: was.value }),
      ...(to !== undefined && { to }),
      ...(check && { check }),
    };
  };
  return {
    held,
    hold: () => put({ at: Date.now(), outputs: snapshot(sheet) }),
    drop: () => put(undefined),
    changeOf,
    /** Lines that differ from what is held, in the order of the sheet. */
    changed: (): string[] =>
      held() === undefined
        ? []
        : sheet.state.order.filter((cell) =>
            Object.keys(sheet.line(cell)?.result?.outputs ?? {}).some((output) => changeOf(cell, output)),
          ),
  };
};

export type Held = ReturnType<typeof createHeld>;
