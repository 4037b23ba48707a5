import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { AssembledCell } from '../rows/assembled.ts';
import type { RowKey } from '../rows/key.ts';
import type { Slip } from '../rows/results.ts';
import type { SheetScope } from '../rows/scope.ts';
import { fitWordOf, wordsOf } from './words.ts';

/** A line that says by how much a bore has closed in. */
export interface Closing {
  field: string;
  key: RowKey;
  /** The interference that closed it in, where its own cell knows it. */
  by?: RowKey;
}

const CLOSES = /\b(?:bore )?clos(?:e|es|ed|ing)[ -]?(?:in|down|up)\b/g;
/** What hangs on it is more than it. */
const MORE = /\b(?:bore|size|diameter|after|before|per|factor|share)\b/;

const saysClosing = (words: string): boolean => {
  const rest = words.replaceAll(CLOSES, '');
  return rest !== words && !MORE.test(rest);
};

/** Closings of a line of the sheet, and those measured of a library cell; what a cell works out itself follows from its interference. */
export function closingsOf(cell: AssembledCell, record: CellRecord, scope: SheetScope): Closing[] {
  if (record.role !== 'cell') {
    const key = cell.outputs.find(({ name }) => name === 'value')?.planned;
    return key !== undefined && saysClosing(wordsOf(record)) ? [{ field: 'entry', key }] : [];
  }
  // The input may be no more than the name of another line.
  const pressed = record.inputs?.interference
    ? scope.outputOf(record, { output: 'interference', from: 0, to: 0 })
    : undefined;
  const by = pressed && 'key' in pressed ? pressed.key : undefined;
  return cell.outputs.flatMap(({ name, measured }) =>
    measured !== undefined && saysClosing(name.replaceAll('_', ' '))
      ? [{ field: `outputs.${name}.measured.entry`, key: measured, ...(by ? { by } : {}) }]
      : [],
  );
}

/** The line, where it is an interference: a difference of two sizes or one that is given. */
export function interferenceOf(cell: AssembledCell, record: CellRecord): RowKey | undefined {
  if (record.role === 'cell' || record.role === 'section' || record.role === 'remark') return undefined;
  if (fitWordOf(wordsOf(record)) !== 'interference') return undefined;
  const { planned, measured } = cell.outputs.find(({ name }) => name === 'value') ?? {};
  return measured ?? planned;
}

/**
 * A ring pressed on outside closes in by no more than 1 / sqrt(1 - nu^2) of what it is pressed by, and so much only in a
 * housing that does not give (ring under pressure from outside, plane stress); nu of a lead bronze or babbitt is below 0.4.
 */
const MOST = 1.1;

/** A bore that has closed in by more than the interference can give. */
export function closeInQuestion(
  { field }: Closing,
  closed: { low: number; value: number },
  interference: { high: number; said: string },
  said: (si: number) => string,
): Slip | undefined {
  const most = MOST * Math.max(0, interference.high);
  if (!(closed.low > most)) return undefined;
  return {
    key: `close-in:${field}`,
    field,
    message: `A bore that closes in by ${said(closed.value)} is pressed by no less, and ${interference.said} is ${said(interference.high)} at most. Is it read and written down right?`,
    cost: closed.value - most,
  };
}
