import type { CellRecord } from '../../../shared/sheet/format.ts';
import { type Choice, type ChoiceFrom, choiceOf } from './choices.ts';

/** Tables whose rows are tolerance classes of ISO 286. */
const CLASSES = ['shaft-classes', 'hole-classes'];

/** `= fit.shaft_class` in place of a tolerance: the class that another line chooses; undefined of any other tolerance. */
export function classTaken(record: CellRecord, from: ChoiceFrom): Choice | undefined {
  const text = record.tolerance?.trim() ?? '';
  if (!text.startsWith('=')) return undefined;
  const asking = { ...record, inputs: { tolerance: text } };
  const found = CLASSES.map((choice) =>
    choiceOf(asking, { name: 'tolerance', label: 'a tolerance', choice }, from),
  );
  return found.find((one) => !('problem' in one)) ?? found[0];
}
