import * as Y from 'yjs';
import { LOST_KEPT, type Lost, type Refusal, type Stored, vectorText } from '../../document/sharing/wire.ts';
import type { Limits } from '../base/limits.ts';
import type { Metrics } from '../base/metrics.ts';
import type { Store } from '../store/store.ts';
import type { Writer } from '../store/writer.ts';
import { frames } from './frames.ts';
import { type Entry, entryBytes, PresenceTable } from './presence.ts';
import { Shadow } from './shadow.ts';

/** Whoever has a document open. */
export interface Member {
  send(frame: Uint8Array): void;
  /** Closes the document to it. */
  refuse(why: Refusal): void;
  readonly keyId: string;
}

export interface RoomParts {
  store: Store;
  writer: Writer;
  metrics: Metrics;
  limits: Limits;
  /** Passes on to other servers what came to this one. */
  tell?: (document: string, what: 'update' | 'presence' | 'lost', bytes: Uint8Array) => void;
}

/** Rows are merged in the store once so many have come to those that were there. */
const MERGE_EVERY = 400;
/** Updates are told again to a server that opens the document within so many milliseconds of them. */
const RECENT = 10_000;

/** A document that somebody has open. */
export class Room {
  readonly members = new Set<Member>();
  readonly shadow: Shadow;
  private readonly presence = new PresenceTable<Member>();
  private readonly stored: Map<number, number>;
  private readonly lost: Lost[];
  private appended = 0;
  private committed = 0;
  private waiting: Array<{ upTo: number; then: () => void }> = [];
  private rows: number;
  private emptySince = performance.now();
  private recent: Array<{ update: Uint8Array; at: number; n: number }> = [];

  private constructor(
    readonly name: string,
    private readonly parts: RoomParts,
    kept: { updates: readonly Uint8Array[]; lost: Lost[] },
  ) {
    this.shadow = new Shadow(name, parts.limits.items);
    this.stored = this.shadow.load(kept.updates);
    this.lost = kept.lost;
    this.rows = kept.updates.length;
  }

  static async open(name: string, parts: RoomParts): Promise<Room> {
    const [updates, lost] = [await parts.store.load(name), await parts.store.lost(name)];
    const room = new Room(name, parts, { updates, lost });
    room.mergeLater();
    return room;
  }

  /** All that came is in the store. */
  get settled(): boolean {
    return this.appended === this.committed;
  }

  /** Milliseconds since the last one left. */
  emptyFor(): number {
    return this.members.size > 0 ? 0 : performance.now() - this.emptySince;
  }

  enter(member: Member): void {
    this.members.add(member);
    const there = this.presence.all();
    if (there.length > 0) member.send(frames.presence(this.name, entryBytes(there)));
    for (const one of this.lost) member.send(frames.said(this.name, one));
    const { state } = this.parts.writer;
    if (state !== 'well') member.send(frames.said(this.name, { type: 'storing', state }));
  }

  leave(member: Member): void {
    if (!this.members.delete(member)) return;
    this.emptySince = performance.now();
    this.passPresence(this.presence.leave(member));
  }

  /**
   * Takes an update: checks it, has it stored, passes it on.
   * @returns why not, where nothing of it is taken; or whether part of it builds on what has not come.
   */
  take(update: Uint8Array, from?: Member): { refusal: Refusal; fault: string } | { early: boolean } {
    const { limits, metrics, tell } = this.parts;
    if (this.shadow.bytes + update.length > limits.sheet) {
      this.shadow.compact();
      if (this.shadow.bytes + update.length > limits.sheet)
        return { refusal: 'sheet-full', fault: 'the sheet is full' };
    }
    const taken = this.shadow.take(update);
    if ('fault' in taken) {
      metrics.add('updates_refused');
      return { refusal: 'update-refused', fault: taken.fault };
    }
    if (taken.update) {
      metrics.add('updates_taken');
      metrics.add('updates_bytes', taken.update.length);
      this.store(taken.update, taken.reached);
      this.send(frames.update(this.name, taken.update), from);
      if (from && tell) tell(this.name, 'update', taken.update);
      for (const { item, ...lost } of taken.lost) this.keepLost(item, lost);
    }
    return { early: taken.early };
  }

  /** Calls `then` when all that has come so far is in the store. */
  whenStored(then: () => void): void {
    if (this.settled) then();
    else this.waiting.push({ upTo: this.appended, then });
  }

  /** What is in the store, told to whoever sent a mark. */
  storedAt(mark: number): Stored {
    return { type: 'stored', mark, vector: vectorText(Y.encodeStateVector(this.stored)) };
  }

  takePresence(entries: readonly Entry[], from: Member | undefined): void {
    // What another server told goes no further.
    this.passPresence(this.presence.take(entries, from), from, from !== undefined);
  }

  expirePresence(): void {
    this.passPresence(this.presence.expire(), undefined, false);
  }

  presenceOf(here = false): Uint8Array {
    return entryBytes(this.presence.all(here));
  }

  send(frame: Uint8Array, but?: Member): void {
    for (const member of this.members) if (member !== but) member.send(frame);
  }

  /** A lost value that another server found. */
  hearLost(lost: Lost): void {
    if (this.lost.some(({ n }) => n === lost.n)) return;
    this.lost.push(lost);
    this.lost.splice(0, this.lost.length - LOST_KEPT);
    this.send(frames.said(this.name, lost));
  }

  /** What another server, which opens the document now, may find in neither the store nor what is told to it. */
  untold(): Uint8Array[] {
    return this.recent.map(({ update }) => update);
  }

  /** Takes what the store has and this room has not: after a time in which nothing came from other servers. */
  async lookAgain(): Promise<void> {
    for (const update of await this.parts.store.load(this.name)) {
      const taken = this.shadow.take(update);
      if ('fault' in taken || !taken.update) continue;
      for (const [client, clock] of taken.reached) this.stored.set(client, clock);
      this.send(frames.update(this.name, taken.update));
    }
  }

  end(): void {
    this.shadow.end();
  }

  private store(update: Uint8Array, reached: ReadonlyMap<number, number>): void {
    this.appended += 1;
    const n = this.appended;
    if (this.parts.tell) {
      const now = performance.now();
      this.recent = this.recent.filter((one) => one.n > this.committed || now - one.at < RECENT);
      this.recent.push({ update, at: now, n });
    }
    this.parts.writer.append(this.name, update, () => {
      for (const [client, clock] of reached) this.stored.set(client, clock);
      this.committed = n;
      this.rows += 1;
      this.mergeLater();
      const due = this.waiting.filter(({ upTo }) => upTo <= n);
      if (due.length === 0) return;
      this.waiting = this.waiting.filter(({ upTo }) => upTo > n);
      for (const { then } of due) then();
    });
  }

  private mergeLater(): void {
    if (this.rows < MERGE_EVERY) return;
    this.rows = 1;
    // A store that cannot merge just now still has every row.
    void this.parts.store.merge(this.name).catch(() => {});
  }

  private keepLost(item: string, lost: Omit<Lost, 'n' | 'type'>): void {
    this.parts.store
      .keepLost(this.name, item, lost)
      .then((n) => {
        // Another server found it first, and tells.
        if (n === undefined) return;
        const told: Lost = { type: 'lost', n, ...lost };
        this.parts.metrics.add('lost_values');
        this.hearLost(told);
        this.parts.tell?.(this.name, 'lost', Buffer.from(JSON.stringify(told)));
      })
      .catch(() => {
        // Not kept, but told to those who are here.
        this.send(frames.said(this.name, { type: 'lost', n: (this.lost.at(-1)?.n ?? 0) + 1, ...lost }));
      });
  }

  private passPresence(entries: readonly Entry[], from?: Member, further = true): void {
    if (entries.length === 0) return;
    const bytes = entryBytes(entries);
    this.send(frames.presence(this.name, bytes), from);
    if (further) this.parts.tell?.(this.name, 'presence', bytes);
  }
}
