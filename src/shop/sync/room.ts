import * as Y from 'yjs';
import { sameValue } from '../../document/model/fields.ts';
import { type Refusal, type RefusedField, type Stored, vectorText } from '../../document/sharing/wire.ts';
import type { Limits } from '../base/limits.ts';
import type { Metrics } from '../base/metrics.ts';
import { wordsOf } from '../base/words.ts';
import { Damaged, type KeptLost, type Store } from '../store/store.ts';
import type { Writer } from '../store/writer.ts';
import { Clients } from './clients.ts';
import { Commits } from './commits.ts';
import { frames } from './frames.ts';
import { LostValues } from './lost-values.ts';
import { type Entry, entriesIn, entryBytes, PresenceTable } from './presence.ts';
import { Shadow, type Taken } from './shadow.ts';
import type { Kind } from './together.ts';

/** Whoever has a document open. */
export interface Member {
  send(frame: Uint8Array): void;
  /** Closes the document to it. */
  refuse(why: Refusal): void;
  /** Asks it once more for what it has. */
  ask(): void;
  readonly keyId: string;
  /** Ids of the keys it has, or had before this one. */
  readonly holds: ReadonlySet<string>;
}

export interface RoomParts {
  store: Store;
  writer: Writer;
  metrics: Metrics;
  limits: Limits;
  /** Passes on to other servers what came to this one. */
  tell?: ((document: string, kind: Kind, bytes: Uint8Array) => void) | undefined;
}

/** Rows are merged in the store once so many have come to those that were there. */
const MERGE_EVERY = 400;

/** Before an update that goes to another server: whose its clients are, where it was written just now. */
const NO_KEY = '0'.repeat(12);
const withKey = (key: string, update: Uint8Array): Uint8Array =>
  Buffer.concat([Buffer.from(key.padEnd(NO_KEY.length).slice(0, NO_KEY.length)), update]);
const keyIn = (bytes: Uint8Array): { key: string; update: Uint8Array } => ({
  key: Buffer.from(bytes.subarray(0, NO_KEY.length)).toString(),
  update: bytes.slice(NO_KEY.length),
});

/** What is stored of a document cannot be read. */
export class Unreadable extends Error {
  constructor(document: string, why: unknown) {
    super(
      `What is stored of ${document} cannot be read (${wordsOf(why)}). Nobody is let in to it and nothing of it is changed: bring it back from a backup.`,
    );
  }
}

/** A document that somebody has open. */
export class Room {
  readonly members = new Set<Member>();
  readonly shadow: Shadow;
  private readonly presence = new PresenceTable<Member>();
  private readonly stored: Map<number, number>;
  private readonly clients: Clients;
  /** Members of which something was left out. */
  private readonly behind = new Set<Member>();
  private readonly lost: LostValues;
  private readonly commits: Commits;
  private rows: number;
  private emptySince = performance.now();
  private taken: () => void = () => {};

  private constructor(
    readonly name: string,
    private readonly parts: RoomParts,
    kept: { updates: readonly Uint8Array[]; lost: KeptLost[]; clients: Map<number, string> },
  ) {
    this.shadow = new Shadow(name, parts.limits.items);
    try {
      this.stored = this.shadow.load(kept.updates);
    } catch (error) {
      this.shadow.end();
      throw new Unreadable(name, error);
    }
    this.commits = new Commits(() => parts.writer.state === 'well');
    this.lost = new LostValues(kept.lost, (one) => {
      this.hearLost(one);
      parts.metrics.add('lost_values');
      parts.tell?.(name, 'lost', Buffer.from(JSON.stringify(one)));
    });
    this.clients = new Clients(kept.clients);
    this.rows = kept.updates.length;
  }

  static async open(name: string, parts: RoomParts): Promise<Room> {
    const { store } = parts;
    const [clients, updates, lost] = [
      await store.clients(name),
      await store.load(name).catch((error: unknown) => {
        throw error instanceof Damaged ? new Unreadable(name, error) : error;
      }),
      await store.lost(name),
    ];
    const room = new Room(name, parts, { updates, lost, clients });
    room.mergeLater();
    return room;
  }

  /** All that came is in the store. */
  get settled(): boolean {
    return this.commits.settled;
  }

  /** Milliseconds since the last one left. */
  emptyFor(): number {
    return this.members.size > 0 ? 0 : performance.now() - this.emptySince;
  }

  enter(member: Member): void {
    this.members.add(member);
    const there = this.presence.all();
    if (there.length > 0) member.send(frames.presence(this.name, entryBytes(there)));
    for (const one of this.lost.last) {
      const frame = this.lostFrame(one);
      if (frame) member.send(frame);
    }
    const { state } = this.parts.writer;
    if (state !== 'well') member.send(frames.said(this.name, { type: 'storing', state }));
  }

  leave(member: Member): void {
    this.behind.delete(member);
    if (!this.members.delete(member)) return;
    this.emptySince = performance.now();
    this.passPresence(this.presence.leave(member));
  }

  /**
   * Takes an update: checks it, has it stored, passes it on.
   * @param live written just now: whoever sends it is who writes as its clients
   * @returns why not, where nothing of it is taken; or whether part of it was left out, since it builds on what has not come
   * or is of a device with another key, which sends it itself.
   */
  take(
    update: Uint8Array,
    from?: Member,
    live = false,
  ): { refusal: Refusal; field?: RefusedField } | { early: boolean } {
    const { limits, metrics, tell } = this.parts;
    if (this.shadow.bytes + update.length > limits.sheet) {
      this.shadow.compact();
      if (this.shadow.bytes + update.length > limits.sheet) return { refusal: 'sheet-full' };
    }
    const taken = this.shadow.take(
      update,
      (client) => from !== undefined && this.clients.isOfOthers(client, from.holds),
      from === undefined,
    );
    if ('fault' in taken) {
      metrics.add('updates_refused');
      if (this.shadow.spoiled !== undefined) this.shut(from);
      const { why: _why, ...place } = taken.fault;
      return { refusal: 'update-refused', field: { type: 'refused', ...place } };
    }
    if (taken.update) {
      metrics.add('updates_taken');
      metrics.add('updates_bytes', taken.update.length);
      const claims = live && from ? this.clients.claim(taken.reached.keys(), from.keyId) : undefined;
      const { update: news } = taken;
      this.store(news, taken, claims);
      const pass = () => {
        this.send(frames.update(this.name, news), from);
        if (from && tell) tell(this.name, 'update', withKey(live ? from.keyId : NO_KEY, news));
      };
      // What another server tells is stored there.
      if (from) this.whenPassed(pass);
      else pass();
      for (const member of this.behind) if (member !== from) member.ask();
      this.taken();
    }
    if (from && taken.early) this.behind.add(from);
    else if (from && !live) this.behind.delete(from);
    return { early: taken.early };
  }

  /** Hears of every update that was taken, once it is passed on. */
  whenTaken(listener: () => void): void {
    this.taken = listener;
  }

  /** Closes the document to all who have it open. */
  refuseAll(why: Refusal, but?: Member): void {
    for (const member of [...this.members]) if (member !== but) member.refuse(why);
  }

  /** Calls `then` when all that has come so far is in the store. */
  whenStored(then: () => void): void {
    this.commits.whenStored(then);
  }

  /** Calls `then` when what has come so far may be told to others. */
  whenPassed(then: () => void): void {
    this.commits.whenPassed(then);
  }

  /** The store takes nothing more, or takes it again. */
  storingChanged(): void {
    const { state } = this.parts.writer;
    this.commits.changed();
    this.send(frames.said(this.name, { type: 'storing', state }));
  }

  /** What is in the store, told to whoever sent a mark. */
  storedAt(mark: number): Stored {
    return { type: 'stored', mark, vector: vectorText(Y.encodeStateVector(this.stored)) };
  }

  takePresence(entries: readonly Entry[], from: Member | undefined): void {
    const own = from ? entries.map((entry) => this.clients.withOwn(entry, from.holds)) : entries;
    const news = this.presence.take(own, from);
    // Before the others hear of the number under which it edits.
    for (const { state } of from ? news : []) {
      const claims = state?.edits !== undefined && this.clients.claim([state.edits], from!.keyId);
      if (claims) this.parts.writer.append({ document: this.name, claims }, () => {});
    }
    this.parts.metrics.add('presence_dropped', entries.length - news.length);
    // What another server told goes no further.
    this.passPresence(news, from, from !== undefined);
  }

  expirePresence(): void {
    this.passPresence(this.presence.expire(), undefined, false);
  }

  presenceOf(): Uint8Array {
    return entryBytes(this.presence.all());
  }

  send(frame: Uint8Array, but?: Member): void {
    for (const member of this.members) if (member !== but) member.send(frame);
  }

  /** A lost value that is kept now, here or by another server. */
  hearLost(kept: KeptLost): void {
    if (!this.lost.keep(kept)) return;
    const frame = this.lostFrame(kept);
    if (frame) this.send(frame);
  }

  /** What another server of the shop tells; what is none of it is passed over. */
  hear(kind: Kind, bytes: Uint8Array): void {
    if (this.shadow.spoiled !== undefined) return;
    try {
      this.heard(kind, bytes);
    } catch (error) {
      console.error(`What another server told of ${this.name} could not be read (${wordsOf(error)}).`);
    }
  }

  private heard(kind: Kind, bytes: Uint8Array): void {
    const tell = this.parts.tell!;
    if (kind === 'update') {
      const { key, update } = keyIn(bytes);
      const taken = this.take(update);
      // The server it came to stores whose it is.
      if (key !== NO_KEY)
        this.clients.claim(
          Y.decodeUpdate(update).structs.map(({ id }) => id.client),
          key,
        );
      // Something before it was not heard.
      if ('early' in taken && taken.early) this.greet();
    } else if (kind === 'presence') this.takePresence(entriesIn(bytes) ?? [], undefined);
    else if (kind === 'lost') this.hearLost(JSON.parse(Buffer.from(bytes).toString()) as KeptLost);
    else {
      const missing = this.shadow.state(bytes);
      if (missing.some((byte) => byte !== 0))
        this.whenPassed(() => tell(this.name, 'update', withKey(NO_KEY, missing)));
      if (kind === 'hello') {
        tell(this.name, 'have', Y.encodeStateVector(this.shadow.doc));
        this.tellPresence();
      }
    }
  }

  /** Asks the other servers for what they have and this one has not, and the other way round. */
  greet(): void {
    if (this.shadow.spoiled !== undefined) return;
    this.parts.tell?.(this.name, 'hello', Y.encodeStateVector(this.shadow.doc));
    this.tellPresence();
  }

  /** Lets everybody go: the document could not be made anew. What is stored is read again when it is opened next. */
  private shut(but: Member | undefined): void {
    console.error(`${this.name} could not be made anew (${this.shadow.spoiled}); its devices are let go.`);
    this.refuseAll('sheet-unreadable', but);
  }

  private tellPresence(): void {
    this.parts.tell?.(this.name, 'presence', entryBytes(this.presence.all(true)));
  }

  /** Takes what the store has and this room has not: after a time in which nothing came from other servers. */
  async lookAgain(): Promise<void> {
    for (const update of await this.parts.store.load(this.name)) {
      const taken = this.shadow.take(update, undefined, true);
      if ('fault' in taken || !taken.update) continue;
      for (const [client, clock] of taken.reached) this.stored.set(client, clock);
      this.send(frames.update(this.name, taken.update));
      this.taken();
    }
  }

  end(): void {
    this.lost.tellNow();
    this.shadow.end();
  }

  private store(update: Uint8Array, { reached, lost }: Taken, claims?: ReadonlyMap<number, string>): void {
    const commit = this.commits.add();
    this.parts.writer.append({ document: this.name, update, lost, ...(claims && { claims }) }, (told) =>
      commit(() => {
        for (const one of told) this.lost.tellLater(one);
        for (const [client, clock] of reached) this.stored.set(client, clock);
        this.rows += 1;
        this.mergeLater();
      }),
    );
  }

  private mergeLater(): void {
    if (this.rows < MERGE_EVERY) return;
    this.rows = 1;
    // A store that cannot merge just now still has every row.
    void this.parts.store.merge(this.name).catch(() => {});
  }

  /** What stands by now goes with it; nothing where that is the same again. */
  private lostFrame({ lost }: KeptLost): Uint8Array | undefined {
    const kept = this.shadow.field(lost);
    return sameValue(kept, lost.lost) ? undefined : frames.said(this.name, { ...lost, kept });
  }

  private passPresence(entries: readonly Entry[], from?: Member, further = true): void {
    if (entries.length === 0) return;
    const bytes = entryBytes(entries);
    this.send(frames.presence(this.name, bytes), from);
    if (further) this.parts.tell?.(this.name, 'presence', bytes);
  }
}
