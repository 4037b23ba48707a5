import { sameValue } from './fields.ts';
import { fieldOfKey } from './readings.ts';

/** One field that was written: `map` is a cell's id, or undefined for the sheet itself. */
export interface Edit {
  map: string | undefined;
  key: string;
  before: unknown;
  after: unknown;
}

export interface Step {
  label: string;
  edits: Edit[];
}

/** What undo needs of a document. */
export interface Fields {
  read(map: string | undefined, key: string): unknown;
  write(map: string | undefined, key: string, value: unknown): void;
}

const DEPTH = 1000;

/**
 * Undo by fields, not by Yjs items: Yjs' own undo takes an added cell out of the document for good, and with it what
 * somebody else has since written in it. Here a field goes back only where it still holds what the step wrote.
 */
export class UndoStacks {
  private done: Step[] = [];
  private undone: Step[] = [];

  push(step: Step): void {
    this.done.push(step);
    if (this.done.length > DEPTH) this.done.shift();
    this.undone = [];
  }

  get undoLabel(): string | undefined {
    return this.done.at(-1)?.label;
  }

  get redoLabel(): string | undefined {
    return this.undone.at(-1)?.label;
  }

  undo(fields: Fields): string | undefined {
    const step = this.done.pop();
    if (!step) return undefined;
    turn(fields, step.edits.toReversed(), 'after', 'before');
    this.undone.push(step);
    return step.label;
  }

  redo(fields: Fields): string | undefined {
    const step = this.undone.pop();
    if (!step) return undefined;
    turn(fields, step.edits, 'before', 'after');
    this.done.push(step);
    return step.label;
  }
}

/** Of a list of readings all that the step touched must still stand so: half of it taken back is a list nobody wrote. */
function turn(
  fields: Fields,
  edits: readonly Edit[],
  from: 'before' | 'after',
  to: 'before' | 'after',
): void {
  const fieldOf = ({ map, key }: Edit) => `${map ?? ''}/${fieldOfKey(key)}`;
  const first = new Map<string, Edit>();
  for (const edit of edits) {
    const key = `${edit.map ?? ''}/${edit.key}`;
    if (!first.has(key)) first.set(key, edit);
  }
  const stands = (edit: Edit) => sameValue(fields.read(edit.map, edit.key), edit[from]);
  const left = new Set([...first.values()].filter((edit) => !stands(edit)).map(fieldOf));
  for (const edit of edits)
    if (!left.has(fieldOf(edit)) && stands(edit)) fields.write(edit.map, edit.key, edit[to]);
}
