import { type Problem, problem } from '../../../shared/problem.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { exportText } from '../files.ts';
import { UndoStacks } from '../model/undo.ts';
import { SheetDocument } from '../sheet-document.ts';
import { backup, type Progress, type Restored, restore } from './backup.ts';
import { Inventory, type Known } from './inventory.ts';
import { type Left, leftOf, sheetsLeft } from './left.ts';
import { ShopList, type Wanted } from './list.ts';
import { OpenSheet } from './open-sheet.ts';
import type { Printer } from './printer.ts';
import { type CheckCounts, type Head, type ListRow, rowOf } from './row.ts';
import { type StorageState, stateOf } from './state.ts';
import type { Revision, Stored, Vault } from './vault.ts';

/** Milliseconds until the list is asked for again that the browser did not give. */
const AGAIN = 5_000;

const INCOMPLETE =
  'The browser has lost the beginning of this sheet: what it kept builds on something that is gone. It was left as it is: open its last revision or a saved file.';

/** All jobs and templates of this browser. */
export class Shop {
  private readonly opened = new Map<string, { sheet: OpenSheet; users: number }>();
  private readonly rows: ShopList;
  private readonly inventory: Inventory | undefined;
  private readonly stops: Array<() => void> = [];
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** When the browser was found to have dropped what it kept, while this page was open. */
  private droppedAt: number | undefined;
  /** What can be undone of sheets that were open since the page was loaded: it outlives a look at the list of jobs. */
  private readonly undo = new Map<string, UndoStacks>();

  /** @param state `saved` where things last, else why they do not, for a warning that stays. */
  constructor(
    readonly vault: Vault,
    rows: readonly ListRow[],
    readonly state: StorageState,
    readonly printer: Printer,
  ) {
    this.rows = new ShopList(rows, (id) => {
      this.inventory?.forget(id);
      this.opened.get(id)?.sheet.discarded();
    });
    if (state.state !== 'saved') return;
    this.inventory = new Inventory();
    const note = () => {
      for (const { id, title } of this.rows.all()) this.inventory?.note({ id, title: title.title });
    };
    note();
    this.stops.push(
      this.rows.observe(note),
      vault.onLoss(() => void this.secure()),
    );
  }

  /** Sheets that were here, were not deleted, and are not in the database any more. */
  missing(): Known[] {
    const known = this.inventory?.known() ?? [];
    return known.filter(({ id }) => !this.rows.get(id) && !this.opened.has(id));
  }

  /** The user has read which sheets are missing. */
  forgetMissing(): void {
    for (const { id } of this.missing()) this.inventory?.forget(id);
    this.droppedAt = undefined;
    this.rows.changed();
  }

  /** When the browser was found to have dropped sheets or states that it kept, while this page was open. */
  dropped(): number | undefined {
    return this.droppedAt;
  }

  /** Every sheet, archived and deleted ones too. */
  list(): ListRow[] {
    return this.rows.all();
  }

  row(id: string): ListRow | undefined {
    return this.rows.get(id);
  }

  find(query: string, wanted?: Wanted): ListRow[] {
    return this.rows.find(query, wanted);
  }

  observeList(listener: () => void): () => void {
    return this.rows.observe(listener);
  }

  /** Opened twice it is the same sheet; close it as often. */
  async open(id: string): Promise<OpenSheet | Problem> {
    const sheet = this.use(id);
    if (sheet) return sheet;
    const left = leftOf(id);
    const loaded = await this.load(id, left);
    if (!('document' in loaded)) return loaded;
    // Somebody else may have opened it meanwhile.
    const opened = this.use(id) ?? this.register(loaded.document, loaded.stored);
    if (left.updates.length > 0) void opened.takeIn(left);
    return opened;
  }

  /** What a sheet says now, without opening it. */
  async file(id: string): Promise<SheetFile | Problem> {
    const sheet = this.opened.get(id)?.sheet;
    if (sheet) return sheet.document.toFile();
    const loaded = await this.load(id);
    if (!('document' in loaded)) return loaded;
    const { document } = loaded;
    const file = document.toFile();
    document.destroy();
    return file;
  }

  /**
   * A new sheet from a file. Always gives an id that opens: where it could not be stored, the sheet is in memory and its
   * state says so.
   */
  async create(file: SheetFile, options: { id?: string } = {}): Promise<string> {
    const sheet = this.register(SheetDocument.fromFile(file, options));
    await sheet.storeAll();
    if (!sheet.idle) this.rows.show(sheet.id, rowOf(sheet.document, Date.now()));
    await sheet.close();
    return sheet.id;
  }

  /** Stores a sheet of the shop's server here, under its own id. One that is here already takes what it lacks. */
  async adopt(id: string, update: Uint8Array): Promise<void> {
    const here = this.rows.get(id) || this.opened.has(id) ? await this.open(id) : undefined;
    if (here && 'close' in here) {
      here.receive(update);
      await here.close();
      return;
    }
    const document = new SheetDocument(id);
    document.applyUpdate(update, 'load');
    const sheet = this.register(document);
    await sheet.storeAll();
    if (!sheet.idle) this.rows.show(id, rowOf(document, Date.now()));
    await sheet.close();
  }

  /** A copy with an id of its own; its cells keep theirs, so that the two can be compared line by line. */
  async duplicate(id: string): Promise<string | Problem> {
    const file = await this.file(id);
    if (!('cells' in file)) return file;
    return this.create({ ...file, title: { ...file.title, title: `${file.title.title} (copy)`.trim() } });
  }

  archive(id: string, archived = true): Promise<StorageState> {
    return this.changeRow(id, (row) => ({ ...row, archived }));
  }

  /** Deletes a sheet so that it can be brought back. */
  remove(id: string): Promise<StorageState> {
    return this.changeRow(id, (row) => ({ ...row, removed: Date.now() }));
  }

  bringBack(id: string): Promise<StorageState> {
    return this.changeRow(id, ({ removed: _removed, ...row }) => row);
  }

  /** Deletes a sheet with its revisions for good. */
  discard(id: string): Promise<StorageState> {
    return this.attempt(async () => {
      await this.vault.discard(id);
      leftOf(id).forget();
      this.inventory?.forget(id);
      this.rows.put(id, undefined);
      const open = this.opened.get(id);
      if (open?.users === 0) {
        // What of it still waited would bring it back.
        this.opened.delete(id);
        open.sheet.end();
      } else open?.sheet.discarded();
    });
  }

  /** Gives a sheet that came from a backup the times and place it had. */
  dateRow(
    id: string,
    was: Partial<Pick<ListRow, 'archived' | 'removed' | 'created' | 'changed'>>,
  ): Promise<StorageState> {
    return this.changeRow(id, (row) => ({ ...row, ...was }));
  }

  /** Caches what the engine counted, with the fingerprint of the sheet it counted. */
  async noteChecks(id: string, counts: CheckCounts, standing?: Head): Promise<StorageState> {
    const at = Date.now();
    const file = await this.file(id);
    if (!('cells' in file)) return this.state;
    const checks = { counts, ...(standing && { standing }), fingerprint: await this.printer.print(file), at };
    return this.changeRow(id, (row) => ({ ...row, checks }));
  }

  /** Keeps the sheet as it stands now. */
  async revise(id: string, label: string): Promise<Revision | StorageState | Problem> {
    const file = await this.file(id);
    if (!('cells' in file)) return file;
    const revision = {
      sheet: id,
      time: Date.now(),
      label,
      fingerprint: await this.printer.print(file),
      text: exportText(file),
    };
    try {
      return await this.vault.addRevision(revision);
    } catch (error) {
      return stateOf(error);
    }
  }

  /** Oldest first. */
  revisions(id: string): Promise<Revision[]> {
    return this.vault.revisions(id);
  }

  /** The whole shop as one file. */
  backup(progress?: Progress): Promise<{ file: Blob; problems: Problem[] }> {
    return backup(this, progress);
  }

  /** Takes in a backup beside what is here. */
  restore(file: Blob | string, progress?: Progress): Promise<Restored | Problem> {
    return restore(this, file, progress);
  }

  setting(key: string): Promise<unknown> {
    return this.vault.setting(key);
  }

  setSetting(key: string, value: unknown): Promise<StorageState> {
    return this.changeSetting(key, () => value);
  }

  /** Changes a setting as it stands when it is written, in another tab too. */
  changeSetting(key: string, change: (now: unknown) => unknown): Promise<StorageState> {
    return this.attempt(() => this.vault.changeSetting(key, change));
  }

  /** Puts aside what waits, in every open sheet, for the next time: the page goes, and the database with it. */
  leave(): void {
    for (const { sheet } of this.opened.values()) sheet.leave();
  }

  /** Stores what a page put aside of sheets that the database does not have at all. */
  async takeInLeft(): Promise<void> {
    for (const id of sheetsLeft()) {
      if (this.rows.get(id) || this.opened.has(id)) continue;
      const sheet = await this.open(id);
      if ('close' in sheet) await sheet.close();
    }
  }

  /** Writes what waits, in every open sheet, and lets go of the database. */
  async close(): Promise<void> {
    for (const stop of this.stops) stop();
    clearTimeout(this.timer);
    await Promise.all([...this.opened.values()].map(({ sheet }) => sheet.flush()));
    for (const { sheet } of this.opened.values()) sheet.end();
    this.opened.clear();
    this.rows.close();
    this.vault.close();
  }

  private use(id: string): OpenSheet | undefined {
    const entry = this.opened.get(id);
    if (entry) entry.users++;
    return entry?.sheet;
  }

  /** The browser has taken the connection away: every open sheet is stored again, and the list read anew. */
  private async secure(): Promise<void> {
    const sheets = [...this.opened.values()].map(({ sheet }) => sheet);
    await Promise.all(sheets.map((sheet) => sheet.secure()));
    await this.readAnew();
  }

  /** Finds out what of the shop the database still has. */
  private async readAnew(): Promise<void> {
    clearTimeout(this.timer);
    const before = this.rows.all();
    this.inventory?.renew(before.map(({ id, title }) => ({ id, title: title.title })));
    try {
      const rows = await this.vault.rows();
      const stored = new Set(rows.map(({ id }) => id));
      const open = new Set(this.opened.keys());
      if (before.some(({ id }) => !stored.has(id) && !open.has(id))) this.droppedAt = Date.now();
      this.rows.replace(rows, open);
    } catch {
      this.timer = setTimeout(() => void this.readAnew(), AGAIN);
    }
  }

  private register(document: SheetDocument, stored?: Stored): OpenSheet {
    const { id } = document;
    const release = () => {
      const entry = this.opened.get(id)!;
      entry.users--;
      letGo();
    };
    // A sheet with something unsaved stays, until that is saved, though nobody looks at it.
    const letGo = () => {
      const entry = this.opened.get(id);
      if (!entry || entry.users > 0 || !sheet.idle) return;
      this.opened.delete(id);
      sheet.end();
    };
    const sheet = new OpenSheet(document, this.vault, this.rows, this.state, stored, {
      release,
      rebased: () => {
        this.droppedAt = Date.now();
        void this.readAnew();
      },
    });
    sheet.observeState(letGo);
    this.opened.set(id, { sheet, users: 1 });
    return sheet;
  }

  /** @param left is in the document too; what of it is damaged is taken out. */
  private async load(
    id: string,
    left: Left = leftOf(id),
  ): Promise<{ document: SheetDocument; stored?: Stored } | Problem> {
    let stored: Stored;
    try {
      stored = await this.vault.updates(id);
    } catch (error) {
      return problem('unknown-key', `The sheet could not be read: ${stateOf(error).message}`, {
        originId: id,
      });
    }
    const { updates } = stored;
    if (updates.length === 0 && left.updates.length === 0) return this.absent(id);
    const stacks = this.undo.get(id) ?? new UndoStacks();
    this.undo.set(id, stacks);
    const document = new SheetDocument(id, stacks);
    try {
      for (const update of updates) document.applyUpdate(update, 'load');
    } catch {
      document.destroy();
      return problem(
        'syntax',
        'What this browser kept of the sheet is damaged and was left as it is: open its last revision or a saved file.',
        { originId: id },
      );
    }
    left.updates = left.updates.filter((update) => {
      try {
        document.applyUpdate(update, 'load');
        return true;
      } catch {
        return false;
      }
    });
    if (document.incomplete) {
      document.destroy();
      return updates.length === 0 ? this.absent(id) : problem('syntax', INCOMPLETE, { originId: id });
    }
    return { document, ...(updates.length > 0 && { stored }) };
  }

  private absent(id: string): Problem {
    const message =
      this.state.state !== 'saved'
        ? 'The browser does not give this page its data, so the sheet cannot be shown. That does not mean that it is lost: close the other windows of this browser and load the page again.'
        : this.inventory?.known().some((one) => one.id === id)
          ? 'This sheet was here and is not any more: the browser has dropped it, and nobody deleted it. Bring it in again from a saved file or from a backup of the shop.'
          : 'There is no such sheet in this browser: it was deleted, or made in another one.';
    return problem('unknown-key', message, { originId: id });
  }

  private changeRow(id: string, change: (row: ListRow) => ListRow): Promise<StorageState> {
    return this.attempt(async () => {
      const row = await this.vault.changeRow(id, (row) => row && change(row));
      if (row) this.rows.put(id, row);
      else await this.readAnew();
    });
  }

  private async attempt(fn: () => Promise<void>): Promise<StorageState> {
    try {
      await fn();
      return this.state;
    } catch (error) {
      return stateOf(error);
    }
  }
}
