import { handbook } from '../../../cells/handbook.ts';
import type { Problem } from '../../../shared/problem.ts';
import { parseTolerance } from '../../language/parse.ts';
import type { Sheet } from '../state/sheet.ts';
import { entryContext, readEntry } from './commit.ts';
import type { EntrySpot } from './spot.ts';

/** What is wrong with a text as it is typed, before it is taken. */
export const entryProblems = (sheet: Sheet, spot: EntrySpot, text: string): Problem[] => {
  const context = entryContext(sheet, spot, handbook);
  if (spot.kind === 'tolerance') {
    const nominal = sheet.line(spot.cell)?.result?.outputs.value?.planned?.value;
    return parseTolerance(text, nominal === undefined ? context : { ...context, nominal }).problems;
  }
  return readEntry(text, context).problems;
};
