import { fieldWords } from '../../shared/sheet/field-words.ts';
import type { CellRecord } from '../../shared/sheet/format.ts';
import type { CellResult } from '../engine/rows/results.ts';
import { EXIT, type Exit, isSettled } from './exit.ts';
import { onOneLine } from './one-line.ts';

export interface Finding {
  /** `error`: a text is in error; `open`: a value is missing or outside what a cell can take; `question`: an entry reads well
   * but is probably not what was meant, and nobody has answered; `caution`: worth a look. */
  grade: 'error' | 'open' | 'question' | 'caution';
  /** Which cell, which field: `3 journal (Journal diameter), entry`. */
  where: string;
  message: string;
}

/** How a cell is named in messages: number in the sheet, name, label. */
const cellWords = (cell: CellRecord, number: number | undefined): string => {
  const name = cell.name ?? cell.kind ?? cell.id;
  return [number === undefined ? '' : String(number), name, cell.label ? `(${cell.label})` : '']
    .filter((part) => part !== '')
    .join(' ');
};

/** Everything a cell says about itself that someone should read. What merely waits for another cell is told there. */
export const findingsOf = (cell: CellRecord, number: number | undefined, result: CellResult): Finding[] => {
  const place = cellWords(cell, number);
  const findings: Finding[] = [];
  // Of a way that is not taken nothing is asked.
  if (result.aside !== undefined) return findings;
  const told = new Set<string>();
  const add = (grade: Finding['grade'], message: string, field?: string): void => {
    if (told.has(message)) return;
    told.add(message);
    findings.push({
      grade,
      where: onOneLine(field ? `${place}, ${fieldWords(field)}` : place),
      message: onOneLine(message),
    });
  };
  for (const own of result.problems) add(own.kind === 'blank' ? 'open' : 'error', own.message, own.field);
  for (const output of Object.values(result.outputs)) {
    const found = output.problem;
    if (!found || output.idle || found.kind === 'upstream') continue;
    if (found.originId !== undefined && found.originId !== cell.id) continue;
    add(found.kind === 'blank' || found.kind === 'range' ? 'open' : 'error', found.message, found.field);
  }
  for (const remark of result.remarks) add(remark.grade === 'error' ? 'open' : 'caution', remark.message);
  for (const { message, field, offer } of result.slips)
    add('question', offer === undefined ? message : `${message} Offered: ${offer}`, field);
  return findings;
};

/** What one cell lets the run end with: its findings, and the checks of its outputs, as new and in service both. */
export const exitOf = (findings: readonly Finding[], result: CellResult): Exit => {
  if (result.aside !== undefined) return EXIT.holds;
  if (findings.some(({ grade }) => grade === 'error')) return EXIT.error;
  if (findings.some(({ grade }) => grade === 'open' || grade === 'question')) return EXIT.open;
  const open = Object.values(result.outputs).some(
    ({ check, idle }) =>
      !idle &&
      !(isSettled(check.asNew.state) && (check.inService === undefined || isSettled(check.inService.state))),
  );
  return open ? EXIT.open : EXIT.holds;
};
