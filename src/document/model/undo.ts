import { sameValue } from './fields.ts';

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
    for (const edit of step.edits.toReversed()) turn(fields, edit, edit.after, edit.before);
    this.undone.push(step);
    return step.label;
  }

  redo(fields: Fields): string | undefined {
    const step = this.undone.pop();
    if (!step) return undefined;
    for (const edit of step.edits) turn(fields, edit, edit.before, edit.after);
    this.done.push(step);
    return step.label;
  }
}

function turn(fields: Fields, edit: Edit, from: unknown, to: unknown): void {
  if (sameValue(fields.read(edit.map, edit.key), from)) fields.write(edit.map, edit.key, to);
}
