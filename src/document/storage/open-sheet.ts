import * as Y from 'yjs';
import type { SheetDocument } from '../sheet-document.ts';
import { joinTabs, type Tabs } from '../tabs.ts';
import { type Left, leave } from './left.ts';
import type { ShopList } from './list.ts';
import { type ListRow, rowOf } from './row.ts';
import { Saver, type SaverTimes } from './saver.ts';
import { DISCARDED, LOST, type StorageState } from './state.ts';
import type { Vault } from './vault.ts';

/** With so many updates a sheet is put together again: opening stays quick, and what was deleted leaves the disk. */
const MANY = 200;

/** A sheet that is being edited: every command is stored at once and told to the other tabs. */
export class OpenSheet {
  readonly id: string;
  private readonly saver: Saver;
  private readonly tabs: Tabs;
  private readonly stop: () => void;
  private base: string | undefined;
  /** Something of it has been stored, now or by those before. */
  private known: boolean;

  /**
   * @param stored what the stored updates are built on; absent for a sheet that is new.
   * @param hooks `release` is called at each `close`, `rebased` when what was stored of the sheet was gone.
   */
  constructor(
    readonly document: SheetDocument,
    private readonly vault: Vault,
    private readonly list: ShopList,
    private readonly done: StorageState,
    stored: { base?: string | undefined } | undefined,
    private readonly hooks: { release: () => void; rebased: () => void },
    times?: SaverTimes,
  ) {
    this.base = stored?.base;
    this.known = stored !== undefined;
    this.id = document.id;
    this.saver = new Saver(
      (update) => this.store(update),
      done,
      (update) => this.tabs.send(update),
      times,
    );
    this.tabs = joinTabs(document, (update) => this.saver.add(update));
    this.stop = document.onUpdate((update, origin) => {
      if (origin === 'local' || origin === 'undo') this.saver.add(update);
    });
  }

  /** Whether the last entry is on the disk. */
  state(): StorageState {
    return this.saver.state.get();
  }

  /** Settles once what has been entered so far is stored, or is not going to be soon; undefined where no store is under way. */
  settled(): Promise<void> | undefined {
    return this.saver.settled();
  }

  observeState(listener: (state: StorageState) => void): () => void {
    return this.saver.state.observe(listener);
  }

  /** Stores the document as a whole, as when it is new. */
  storeAll(): Promise<void> {
    this.saver.add(this.document.updateSince());
    return this.saver.flush();
  }

  /** Tries to store what could not be stored; whole, where what was stored is gone. */
  retry(): Promise<void> {
    return this.idle && this.state() !== this.done ? this.storeAll() : this.saver.flush();
  }

  /** The browser may have dropped what is stored: stores it all again, and says so until it is. */
  secure(): Promise<void> {
    this.saver.warn(LOST);
    return this.storeAll();
  }

  /** The sheet was deleted for good elsewhere: stored again only when asked to, or with the next entry. */
  discarded(): void {
    this.saver.warn(DISCARDED);
  }

  /** Puts aside what is not stored yet: the page goes. */
  leave(): void {
    const { rest } = this.saver;
    if (rest) leave(this.id, rest);
  }

  /** Stores what was put aside, and is in the document already. */
  async takeIn(left: Left): Promise<void> {
    for (const update of left.updates) this.saver.add(update);
    await this.saver.flush();
    if (this.idle) left.forget();
  }

  /** Takes what came from the shop's server: shown, stored here, and told to the other tabs. */
  receive(update: Uint8Array): void {
    const stop = this.document.onUpdate((news) => this.saver.add(news));
    try {
      this.document.applyUpdate(update, 'remote');
    } finally {
      stop();
    }
  }

  /** Stores the rest, as far as it can be; the shop goes. */
  flush(): Promise<void> {
    return this.saver.flush();
  }

  /** Asks the other tabs for what this one missed while it was frozen. */
  catchUp(): void {
    this.tabs.hello();
  }

  /** Everything is stored. */
  get idle(): boolean {
    return this.saver.idle;
  }

  /** Stores the rest. What cannot be stored stays in memory: the sheet opens again with it. */
  async close(): Promise<void> {
    await this.saver.flush();
    this.hooks.release();
  }

  /** Lets go of everything; for the shop alone. */
  end(): void {
    this.saver.close();
    this.stop();
    this.tabs.close();
    this.document.destroy();
  }

  private async store(update: Uint8Array): Promise<void> {
    let stored: ListRow | undefined;
    const addition = { update, base: this.base, whole: () => this.document.updateSince() };
    const { count, base } = await this.vault.append(this.id, addition, (row) => {
      stored = rowOf(this.document, Date.now(), row ?? this.list.get(this.id));
      return stored;
    });
    const rebased = this.known && base !== this.base;
    this.base = base;
    this.known = true;
    this.list.put(this.id, stored);
    if (rebased) this.hooks.rebased();
    // Failing, it leaves everything as it was; the next time is soon enough.
    if (count >= MANY) await this.vault.compact(this.id, mergeAll).catch(() => {});
  }
}

/** One update in place of many, without what was overwritten or deleted. @throws when one of them is damaged. */
export function mergeAll(updates: Uint8Array[]): Uint8Array {
  const doc = new Y.Doc();
  for (const update of updates) Y.applyUpdate(doc, update);
  const merged = Y.encodeStateAsUpdate(doc);
  doc.destroy();
  return merged;
}
