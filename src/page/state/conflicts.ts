import { createSignal, onCleanup } from 'solid-js';
import type { Overwritten } from '../../document/model/overwritten.ts';
import { fieldOfKey } from '../../document/model/readings.ts';
import type { SheetDocument } from '../../document/sheet-document.ts';

/** Something that was entered and does not stand, because the same field was written in two places at once. */
export interface Conflict {
  /** Absent for a field of the sheet itself. */
  cell: string | undefined;
  field: string;
  /** What does not stand: of this tab, unless it is said to be `another`'s. */
  mine: string;
  another?: true;
  /** What stands; absent where the line has been deleted. */
  theirs: string | undefined;
  /** Makes it say what does not stand after all. */
  enter: () => void;
}

const asText = (value: unknown): string =>
  value === undefined ? '' : typeof value === 'string' ? value : JSON.stringify(value);

/** What was entered here and does not stand, until the user has chosen. Call it inside a component. */
export const createConflicts = (of: SheetDocument) => {
  const [list, setList] = createSignal<readonly Conflict[]>([]);
  // Said once: an editor that goes with its line tells of the same text again.
  const isSame = (one: Conflict, other: Conflict) =>
    one.cell === other.cell && one.field === other.field && one.mine === other.mine;
  const add = (...found: Conflict[]) =>
    setList((before) => [...before.filter((one) => !found.some((other) => isSame(one, other))), ...found]);
  const close = (conflict: Conflict) => setList((before) => before.filter((one) => one !== conflict));
  const ofDocument = (found: Overwritten): Conflict => ({
    cell: found.cell,
    field: fieldOfKey(found.key),
    mine: asText(of.shown(found.mine, found.cell, found.key)),
    theirs: asText(of.shown(found.theirs, found.cell, found.key)),
    ...(found.another && { another: true as const }),
    enter: () => of.enterAgain(found),
  });
  onCleanup(of.observeOverwritten((found) => add(...found.map(ofDocument))));
  return { list, add, close, closeAll: () => setList([]) };
};
