import * as Y from 'yjs';
import type { Problem } from '../../shared/problem.ts';
import { sheetFieldWords } from '../../shared/sheet/field-words.ts';
import {
  type CellRecord,
  type DecisionRule,
  FORMAT,
  type KeptValue,
  type SheetFile,
  type SheetUnits,
  type TitleBlock,
  VERSION,
} from '../../shared/sheet/format.ts';
import { SHEET_FIELDS } from '../../shared/sheet/sheet-fields.ts';
import { withNeeds } from '../../shared/sheet/ways.ts';
import { become } from './commands/become.ts';
import { setField } from './commands/field.ts';
import { fieldLabel, linesLabel } from './commands/labels.ts';
import { addCell, deleteCells, duplicateCells, insertCells, moveCells } from './commands/lines.ts';
import { renameCell } from './commands/name.ts';
import { type Change, watchChanges } from './model/change.ts';
import { Editing } from './model/editing.ts';
import { flatten, unflatten } from './model/fields.ts';
import { type Overwritten, watchOverwritten } from './model/overwritten.ts';
import { Reading } from './model/reading.ts';
import { elementIn, fieldOfKey, isHead, listsIn, listText } from './model/readings.ts';
import { GONE, type Origin, Replica } from './model/replica.ts';
import { type Step, UndoStacks } from './model/undo.ts';
import { showVariants, storeVariants, type Variants } from './model/variants.ts';
import { ReadOnlySheet } from './read-only.ts';
import { uniqueId } from './unique-id.ts';

/**
 * A job sheet that can be edited: a Yjs document, read with names and in order, written by commands. One command is one
 * transaction, one undo step and one update to store. Records read from it are not to be changed in place.
 */
export class SheetDocument {
  /** Set where the sheet is only to be read: called in place of an edit, which throws. */
  refuse: (() => void) | undefined;
  private readonly replica = new Replica();
  private readonly reading = new Reading(this.replica);
  private readonly editing = new Editing(this.replica, this.reading);
  private readonly listeners = new Set<(change: Change) => void>();
  private readonly overwrittenListeners = new Set<(found: readonly Overwritten[]) => void>();
  private step: Step | undefined;

  /**
   * An empty document; it fills by {@link applyUpdate}. See {@link fromFile}.
   * @param stacks what can be undone, where the sheet was open before
   */
  constructor(
    readonly id: string = uniqueId(),
    private readonly stacks = new UndoStacks(),
  ) {
    watchChanges(this.replica, this.reading, (change) => {
      for (const listener of [...this.listeners]) listener(change);
    });
    watchOverwritten(this.replica, (found) => {
      for (const listener of [...this.overwrittenListeners]) listener(found);
    });
  }

  static fromFile(file: SheetFile, options: { id?: string } = {}): SheetDocument {
    const sheet = new SheetDocument(options.id);
    sheet.replica.transact(() => become(sheet.editing, file), 'load');
    sheet.editing.edits = [];
    return sheet;
  }

  /** The whole sheet as a file, with names, in order. Shares nothing with the document. */
  toFile(): SheetFile {
    const { title, units, rule, variants, ...rest } = this.settings();
    const file = {
      format: FORMAT,
      version: VERSION,
      ...rest,
      title,
      units,
      rule,
      cells: this.cells(),
    } as SheetFile;
    if (variants) file.variants = variants;
    return structuredClone(withNeeds(file));
  }

  // Reading

  order(): string[] {
    return [...this.reading.order()];
  }

  cell(id: string): CellRecord | undefined {
    return this.reading.cell(id);
  }

  /** Id of the live cell a name stands for. */
  idOf(name: string): string | undefined {
    return this.reading.idOf(name);
  }

  cells(): CellRecord[] {
    return this.reading.order().map((id) => this.reading.cell(id)!);
  }

  /** Live cells whose texts refer to a cell. */
  usedBy(id: string): string[] {
    return this.reading.usedBy(new Set([id]));
  }

  title(): TitleBlock {
    return this.settings().title;
  }

  units(): SheetUnits {
    return this.settings().units;
  }

  rule(): DecisionRule {
    return this.settings().rule;
  }

  template(): boolean {
    return this.settings().template === true;
  }

  from(): SheetFile['from'] {
    return this.settings().from;
  }

  /** The way taken, by what the ways lead to. */
  ways(): SheetFile['ways'] {
    return this.settings().ways;
  }

  variants(): Variants {
    return this.settings().variants ?? [];
  }

  tables(): KeptValue[] {
    return this.settings().tables ?? [];
  }

  observe(listener: (change: Change) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Hears of what this tab wrote and another, at the same moment, overwrote. @returns a function that ends it. */
  observeOverwritten(listener: (found: readonly Overwritten[]) => void): () => void {
    this.overwrittenListeners.add(listener);
    return () => this.overwrittenListeners.delete(listener);
  }

  /** A stored value of a field as people see it, with names; of a list of readings, what its parts make together. */
  shown(value: unknown, cell?: string, key?: string): unknown {
    if (typeof value === 'string') return this.reading.show(value);
    const element = elementIn(value);
    if (element) return `${element.text} ${element.unit}`.trim();
    if (isHead(value) && cell !== undefined && key !== undefined)
      return listText(listsIn(this.replica.fields(cell)).get(key) ?? [], value);
    return value;
  }

  // Commands

  setEntry(id: string, text: string): void {
    this.setField(id, 'entry', text);
  }

  /**
   * @param path field in the file form: `limits.lower`, `inputs.housing`, `outputs.close_in.measured.entry`, `note` ...
   * @param value text, flag, list or record; `undefined` or `''` takes the field away.
   */
  setField(id: string, path: string, value: unknown): Problem | undefined {
    if (path === 'name') return this.renameCell(id, String(value ?? ''));
    this.run(fieldLabel(this.editing, id, path), () => setField(this.editing, id, path, value));
    return undefined;
  }

  /** @returns the id. `after: null` puts it at the top. */
  addCell(after: string | null, fields: Partial<CellRecord>, options?: { nameFromLabel?: boolean }): string {
    return this.run(`new line ${fields.label ?? fields.name ?? ''}`.trim(), () =>
      addCell(this.editing, after, fields, options),
    );
  }

  /** Lines from elsewhere, with new ids; names that are taken get a number, references among the lines follow. */
  insertCells(
    after: string | null,
    records: readonly Partial<CellRecord>[],
    label = 'insertion of lines',
  ): string[] {
    return this.run(label, () => insertCells(this.editing, after, records));
  }

  renameCell(id: string, name: string): Problem | undefined {
    return this.run(linesLabel(this.editing, 'name', [id]), () => renameCell(this.editing, id, name));
  }

  moveCell(id: string, after: string | null): void {
    this.moveCells([id], after);
  }

  moveCells(ids: readonly string[], after: string | null): void {
    this.run(linesLabel(this.editing, 'move', ids), () => moveCells(this.editing, ids, after));
  }

  deleteCells(ids: readonly string[]): void {
    this.run(linesLabel(this.editing, 'deletion', ids), () => deleteCells(this.editing, ids));
  }

  duplicateCells(ids: readonly string[]): string[] {
    return this.run(linesLabel(this.editing, 'copy', ids), () => duplicateCells(this.editing, ids));
  }

  setTitle<K extends keyof TitleBlock>(field: K, value: TitleBlock[K]): void {
    const gone = value === undefined || (value === '' && field !== 'title');
    this.run(sheetFieldWords(`title.${field}`), () =>
      this.editing.set(undefined, `title.${field}`, gone ? undefined : value),
    );
  }

  setUnits(units: Partial<SheetUnits>): void {
    this.run(
      Object.keys(units)
        .map((name) => sheetFieldWords(`units.${name}`))
        .join(', '),
      () => {
        for (const [name, value] of Object.entries(units))
          this.editing.set(undefined, `units.${name}`, value);
      },
    );
  }

  setRule(rule: DecisionRule): void {
    this.run(sheetFieldWords('rule'), () => this.editing.set(undefined, 'rule', rule));
  }

  /** Takes one of several ways to an end; undefined lets each of them count. */
  setWay(to: string, by: string | undefined): void {
    const [path] = flatten({ ways: { [to]: '' } }, SHEET_FIELDS).keys();
    this.run(sheetFieldWords(`ways.${to}`), () => this.editing.set(undefined, path!, by || undefined));
  }

  setTemplate(template: boolean): void {
    this.run(sheetFieldWords('template'), () =>
      this.editing.set(undefined, 'template', template || undefined),
    );
  }

  setFrom(from: SheetFile['from']): void {
    this.run(sheetFieldWords('from'), () => this.editing.set(undefined, 'from', from));
  }

  setVariants(variants: Variants): void {
    const stored = variants.length > 0 ? storeVariants(variants, this.reading) : undefined;
    this.run(sheetFieldWords('variants'), () => this.editing.set(undefined, 'variants', stored));
  }

  setTables(tables: readonly KeptValue[]): void {
    this.run(sheetFieldWords('tables'), () =>
      this.editing.set(undefined, 'tables', tables.length > 0 ? tables : undefined),
    );
  }

  /** Brings back a line that was deleted. */
  reviveCell(id: string): void {
    this.run(linesLabel(this.editing, 'return', [id]), () => this.editing.set(id, GONE, undefined));
  }

  /** Writes again what this tab had entered and another overwrote. */
  enterAgain({ cell, key, mine }: Overwritten): void {
    const label = cell === undefined ? 'entry again' : fieldLabel(this.editing, cell, fieldOfKey(key));
    this.run(label, () => this.editing.set(cell, key, mine));
  }

  /** Makes the sheet what a file says (a revision, a template's new edition), as one step. Cells are matched by id. */
  become(file: SheetFile, label: string): void {
    this.run(label, () => become(this.editing, file));
  }

  /** Everything `fn` does is one step. If it throws, nothing of it stays. */
  batch<T>(label: string, fn: () => T): T {
    return this.run(label, fn);
  }

  undo(): string | undefined {
    if (this.refuse) return undefined;
    return this.replica.transact(() => this.stacks.undo(this.editing), 'undo');
  }

  redo(): string | undefined {
    if (this.refuse) return undefined;
    return this.replica.transact(() => this.stacks.redo(this.editing), 'undo');
  }

  undoLabel(): string | undefined {
    return this.stacks.undoLabel;
  }

  redoLabel(): string | undefined {
    return this.stacks.redoLabel;
  }

  // Exchange with storage and other tabs

  /** Every update of the document, as it happens, with where it came from. */
  onUpdate(listener: (update: Uint8Array, origin: Origin) => void): () => void {
    const known: readonly unknown[] = ['local', 'undo', 'load'];
    const heard = (update: Uint8Array, origin: unknown) =>
      listener(update, known.includes(origin) ? (origin as Origin) : 'remote');
    this.replica.doc.on('update', heard);
    return () => this.replica.doc.off('update', heard);
  }

  /** @throws when the bytes are no update; the document is as before. */
  applyUpdate(update: Uint8Array, origin: 'remote' | 'load'): void {
    Y.applyUpdate(this.replica.doc, update, origin);
  }

  /** The number under which this document's own edits are known to others. */
  get clientId(): number {
    return this.replica.doc.clientID;
  }

  /** What the document knows, for {@link updateSince}. */
  stateVector(): Uint8Array {
    return Y.encodeStateVector(this.replica.doc);
  }

  /** One update with everything a document of that state lacks; everything there is when none is given. */
  updateSince(state?: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.replica.doc, state);
  }

  /** Holds updates that build on others which have not come: what it says is not the whole sheet. */
  get incomplete(): boolean {
    return this.replica.doc.store.pendingStructs !== null || this.replica.doc.store.pendingDs !== null;
  }

  destroy(): void {
    this.listeners.clear();
    this.replica.doc.destroy();
  }

  private settings(): Omit<SheetFile, 'format' | 'version' | 'cells'> {
    const stored = unflatten(this.replica.sheet.entries()) as unknown as Omit<
      SheetFile,
      'format' | 'version' | 'cells'
    >;
    const settings = {
      ...stored,
      title: { ...stored.title, title: stored.title?.title ?? '' },
      units: { ...stored.units, length: stored.units?.length ?? 'in' },
      rule: stored.rule ?? 'iso14253-2013',
    };
    if (settings.variants) settings.variants = showVariants(settings.variants, this.reading);
    return settings;
  }

  private run<T>(label: string, fn: () => T): T {
    if (this.step) return fn();
    if (this.refuse) {
      this.refuse();
      throw new ReadOnlySheet();
    }
    const step: Step = { label, edits: [] };
    this.step = step;
    this.editing.edits = step.edits;
    return this.replica.transact(() => {
      try {
        const result = fn();
        if (step.edits.length > 0) this.stacks.push(step);
        return result;
      } catch (error) {
        this.editing.rollBack();
        throw error;
      } finally {
        // Before the listeners hear of it, so that a command of theirs is a step of its own.
        this.step = undefined;
        this.editing.edits = [];
      }
    }, 'local');
  }
}
