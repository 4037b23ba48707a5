import * as Y from 'yjs';
import { isObject } from '../../../shared/sheet/schema.ts';
import { emptyReplica, faultIn } from '../model/stored-fault.ts';
import {
  type ListedEquipment,
  roomOn,
  type SharedEquipment,
  sharedEquipmentIn,
} from '../sharing/shared-equipment.ts';
import {
  EQUIPMENT_MAP,
  LIST_DOCUMENT,
  LIST_MAP,
  MAX_DEVICE_NAME,
  MAX_TITLE,
  type Shared,
  sheetDocument,
} from '../sharing/wire.ts';
import { Observable } from '../storage/observable.ts';
import type { Connection, Ended, ShopLine } from './shop-line.ts';

/** One sheet in the list of what is shared. */
export type SharedSheet = Shared & { id: string };

const isId = (id: string): boolean => /^[\w-]{1,64}$/.test(id);

const sharedIn = (id: string, value: unknown): SharedSheet[] => {
  if (!isId(id) || !isObject(value)) return [];
  const { title, template, by, since, ended } = value;
  return typeof title === 'string' &&
    title.length <= MAX_TITLE &&
    typeof by === 'string' &&
    by.length <= MAX_DEVICE_NAME &&
    typeof since === 'number'
    ? [{ id, title, template: template === true, by, since, ...(ended === true && { ended }) }]
    : [];
};

/** A gauge, a press or a metal on the list. */
export type OnList = ListedEquipment & {
  /** Written here, and the server has not said yet that it is stored. */
  onItsWay?: true;
};

const equipmentIn = (id: string, value: unknown): ListedEquipment[] => {
  const shared = isId(id) ? sharedEquipmentIn(value) : undefined;
  return shared ? [{ ...shared, id }] : [];
};

export interface ListState {
  line: 'joining' | 'open' | 'away' | 'ended';
  ended?: Ended;
  /** The key only reads: nothing is put on the list with it. */
  readOnly: boolean;
  /** What the server says of its own disk. */
  trouble?: 'full' | 'failing';
  sheets: readonly SharedSheet[];
  equipment: readonly OnList[];
}

const lists = new WeakMap<ShopLine, SharedList>();

/** What is shared at the shop's server, as it changes. */
export class SharedList {
  readonly state = new Observable<ListState>({ line: 'joining', readOnly: false, sheets: [], equipment: [] });
  private readonly doc = new Y.Doc();
  private readonly map = this.doc.getMap<unknown>(LIST_MAP);
  private readonly own = this.doc.getMap<unknown>(EQUIPMENT_MAP);
  private readonly connection: Connection;

  private users = 0;
  private mark = 0;
  /** Who waits for the server's word that something is stored, by the mark it was asked with. */
  private readonly waiting = new Map<number, { ids: readonly string[]; settle: (ended?: Ended) => void }>();

  private constructor(private readonly line: ShopLine) {
    this.doc.on('afterTransaction', () => this.read());
    this.connection = line.connect(LIST_DOCUMENT, this.doc, {
      open: (readOnly) => this.set({ readOnly }),
      synced: () => {
        this.set({ line: 'open' });
        this.read();
        // Asked over a line that was lost.
        if (this.waiting.size > 0) this.ask();
      },
      away: () => this.set({ line: 'away' }),
      ended: (ended) => {
        lists.delete(line);
        this.set({ line: 'ended', ended, sheets: [], equipment: [] });
        this.answer(Number.POSITIVE_INFINITY, ended);
      },
      said: (what) => {
        if (what.type === 'stored' && what.mark !== undefined) this.answer(what.mark);
        if (what.type !== 'storing') return;
        const { trouble: _trouble, ...rest } = this.state.get();
        this.state.set(what.state === 'well' ? rest : { ...rest, trouble: what.state });
      },
    });
  }

  /** The list over a line, which carries a document once: all who ask for it have the same. To be closed as often. */
  static over(line: ShopLine): SharedList {
    const list = lists.get(line) ?? new SharedList(line);
    if (list.state.get().line !== 'ended') lists.set(line, list);
    list.users += 1;
    return list;
  }

  /**
   * Puts a sheet on the list, or tells that it is shared no longer.
   * @returns why not; undefined once the server has stored it
   */
  put(id: string, shared: Shared): Promise<Ended | undefined> {
    return this.write([], () => this.map.set(id, shared));
  }

  /**
   * Puts gauges, presses and metals on the list, or tells that they are shared no longer: all at once.
   * @returns why not; undefined once the server has stored it
   */
  putEquipment(
    entries: ReadonlyArray<readonly [id: string, shared: SharedEquipment]>,
  ): Promise<Ended | 'full' | undefined> {
    const isNew = entries.some(([id]) => !this.own.has(id));
    const gone = isNew ? roomOn(this.state.get().equipment) : [];
    if (!gone) return Promise.resolve('full');
    return this.write(
      entries.map(([id]) => id),
      () => {
        for (const id of gone) this.own.delete(id);
        for (const [id, shared] of entries) this.own.set(id, shared);
      },
    );
  }

  /** Waits for the first answer of the server. */
  answered(): Promise<ListState> {
    return until(this.state, ({ line }) => line === 'open' || line === 'ended');
  }

  close(): void {
    this.users -= 1;
    if (this.users > 0) return;
    if (lists.get(this.line) === this) lists.delete(this.line);
    this.connection.close();
    queueMicrotask(() => this.doc.destroy());
  }

  private write(ids: readonly string[], change: () => void): Promise<Ended | undefined> {
    const { ended, readOnly } = this.state.get();
    if (ended !== undefined) return Promise.resolve(ended);
    if (readOnly) return Promise.resolve('key-reads-only');
    return new Promise((settle) => {
      this.waiting.set(this.mark + 1, { ids, settle });
      this.doc.transact(change);
      this.ask();
    });
  }

  private ask(): void {
    this.mark += 1;
    if (this.state.get().line === 'open') this.connection.send({ mark: this.mark });
  }

  /** All that was asked for up to a mark is answered by it. */
  private answer(upTo: number, ended?: Ended): void {
    for (const [mark, { settle }] of [...this.waiting])
      if (mark <= upTo) {
        this.waiting.delete(mark);
        settle(ended);
      }
    if (ended === undefined) this.read();
  }

  private set(part: Partial<ListState>): void {
    this.state.set({ ...this.state.get(), ...part });
  }

  private read(): void {
    const sheets = [...this.map].flatMap(([id, value]) => sharedIn(id, value));
    const waiting = new Set([...this.waiting.values()].flatMap(({ ids }) => ids));
    const equipment = [...this.own]
      .flatMap(([id, value]) => equipmentIn(id, value))
      .map((one): OnList => (waiting.has(one.id) ? { ...one, onItsWay: true } : one));
    this.set({
      sheets: sheets.sort((a, b) => b.since - a.since),
      equipment: equipment.sort((a, b) => b.since - a.since),
    });
  }
}

const until = <T>(value: Observable<T>, is: (now: T) => boolean): Promise<T> =>
  new Promise((settle) => {
    if (is(value.get())) {
      settle(value.get());
      return;
    }
    const stop = value.observe((now) => {
      if (!is(now)) return;
      stop();
      settle(now);
    });
  });

/** A sheet as it stands at the server, to be stored here for the first time; or why there is none. */
export const fetchSheet = (line: ShopLine, id: string): Promise<Uint8Array | Ended> =>
  new Promise((settle) => {
    const doc = emptyReplica();
    let connection: Connection | undefined;
    const done = (what: Uint8Array | Ended) => {
      connection?.close();
      queueMicrotask(() => doc.destroy());
      settle(what);
    };
    doc.on('update', (_update: Uint8Array, _origin: unknown, _doc: Y.Doc, transaction: Y.Transaction) => {
      if (faultIn(doc, transaction) !== undefined) done('unsound');
    });
    connection = line.connect(sheetDocument(id), doc, {
      open: () => undefined,
      synced: () => done(Y.encodeStateAsUpdate(doc)),
      away: () => undefined,
      ended: done,
      said: () => undefined,
    });
  });
