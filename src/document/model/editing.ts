import * as Y from 'yjs';
import { sameValue, storable } from './fields.ts';
import { mayList, setReadings } from './list-edit.ts';
import type { Reading } from './reading.ts';
import { isElementKey } from './readings.ts';
import { GONE, type Replica } from './replica.ts';
import type { Edit, Fields } from './undo.ts';

/** The one way to write in a document: keeps the reading fresh and notes what was there before. */
export class Editing implements Fields {
  /** Edits of the step under way, noted by {@link set}. */
  edits: Edit[] = [];

  constructor(
    readonly replica: Replica,
    readonly reading: Reading,
  ) {}

  read(map: string | undefined, key: string): unknown {
    return map === undefined ? this.replica.sheet.get(key) : this.replica.get(map, key);
  }

  /** Writes without noting, for undo itself. */
  write(map: string | undefined, key: string, value: unknown): void {
    const target = map === undefined ? this.replica.sheet : this.replica.cells.get(map);
    if (!target) return;
    if (value === undefined) target.delete(key);
    else target.set(key, value);
    if (map !== undefined) this.reading.touch(map);
  }

  /**
   * Writes a field of a cell (`map` its id) or of the sheet; `undefined` takes it away. The same value again is no edit. A
   * list of readings is written reading by reading.
   */
  set(map: string | undefined, key: string, value: unknown): void {
    const after = storable(value);
    if (
      map !== undefined &&
      !isElementKey(key) &&
      (after === undefined || typeof after === 'string') &&
      mayList(key)
    )
      setReadings(this, map, key, after);
    else this.setField(map, key, after);
  }

  /** Writes what lies under one key, as it lies there. */
  setField(map: string | undefined, key: string, after: unknown): void {
    const before = this.read(map, key);
    if (sameValue(before, after)) return;
    this.write(map, key, after);
    this.edits.push({ map, key, before, after });
  }

  /** Undoing this marks the cell as gone; it never leaves the document, so nobody's edit of it is lost. */
  create(id: string, fields: ReadonlyMap<string, unknown>): void {
    this.replica.cells.set(id, new Y.Map(fields));
    this.reading.touch(id);
    this.edits.push({ map: id, key: GONE, before: true, after: undefined });
  }

  /** Takes back what the step under way has written so far. */
  rollBack(): void {
    for (const edit of this.edits.toReversed()) this.write(edit.map, edit.key, edit.before);
    this.edits = [];
  }
}
