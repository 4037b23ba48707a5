import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { WebSocketServer } from 'ws';
import {
  CLOSED,
  type KeyRecord,
  LIST_DOCUMENT,
  type Refusal,
  type Storing,
  sheetOfDocument,
  tokenIn,
  WIRE_EDITION,
} from '../../document/sharing/wire.ts';
import { Bucket } from '../base/bucket.ts';
import { LIMITS, type Limits } from '../base/limits.ts';
import type { Metrics } from '../base/metrics.ts';
import type { Keys } from '../store/keys.ts';
import type { Store } from '../store/store.ts';
import { Writer } from '../store/writer.ts';
import { type Admitted, type Hub, Line } from './line.ts';
import { Room, Unreadable } from './room.ts';
import { Together } from './together.ts';

export interface SyncParts {
  /** Prepared. */
  store: Store;
  keys: Keys;
  metrics: Metrics;
  limits?: Partial<Limits>;
  /** Address of the Redis over which several servers share one database: `redis://...`. */
  redis?: string | undefined;
}

interface Health {
  storing: Storing['state'];
  sockets: number;
  documents: number;
  connections: number;
  /** Updates not yet stored. */
  waiting: number;
  /** Whether the other servers are heard; absent where there is no other. */
  together?: boolean;
}

export interface Sync {
  /** Takes a WebSocket over. Path, host and origin of the request were looked at before. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  /** Stops cleanly. @returns how many updates could not be stored; the pages still have them. */
  stop(): Promise<number>;
  health(): Health;
}

/** Milliseconds between looks at each line; a page takes a line for lost after 30 seconds without a message. */
const BEAT = 10_000;
/** A document that nobody has open is kept for as long: pages come back after a lost line. */
const KEPT_OPEN = 10_000;
/** How long a clean stop waits for the store. */
const STOPS_WITHIN = 5000;
const GOING_AWAY = 1001;

/** What has come with one key, or to one sheet. */
interface Count {
  open: number;
  messages: Bucket;
  bytes: Bucket;
  refusals: Bucket;
}

class Server implements Hub, Sync {
  readonly limits: Limits;
  readonly metrics: Metrics;
  private readonly sockets: WebSocketServer;
  private readonly lines = new Set<Line>();
  private readonly rooms = new Map<string, Promise<Room>>();
  private readonly opened = new Map<string, Room>();
  private readonly counts = new Map<string, Count>();
  private readonly writer: Writer;
  private readonly together: Together | undefined;
  private readonly timer: NodeJS.Timeout;
  private stopping = false;

  constructor(private readonly parts: SyncParts) {
    this.limits = { ...LIMITS, ...parts.limits };
    this.metrics = parts.metrics;
    this.sockets = new WebSocketServer({ noServer: true, maxPayload: 2 * this.limits.message });
    this.writer = new Writer(parts.store, parts.metrics, () => this.tellStoring());
    if (parts.redis !== undefined)
      this.together = new Together(
        parts.redis,
        parts.store.shop(),
        (document, kind, bytes) => this.opened.get(document)?.hear(kind, bytes),
        (document) => this.opened.get(document)?.greet(),
      );
    parts.keys.whenEnded((ids) => {
      for (const line of this.lines) line.refuseKeys(ids);
    });
    this.timer = setInterval(() => this.beat(), BEAT);
    this.timer.unref();
  }

  get unstored(): number {
    return this.writer.bytes;
  }

  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void {
    if (this.stopping) {
      socket.destroy();
      return;
    }
    socket.on('error', () => {});
    const address = request.socket.remoteAddress ?? '';
    this.sockets.handleUpgrade(request, socket, head, (ws) => {
      const strangers = [...this.lines].filter((line) => line.withoutKey && line.address === address);
      this.metrics.add('sockets_opened');
      const line = new Line(ws, socket, address, this);
      this.lines.add(line);
      if (this.lines.size > this.limits.sockets || strangers.length >= this.limits.socketsWithoutKey)
        line.end(CLOSED.crowded);
    });
  }

  async admit(document: string, token: string): Promise<Admitted | Refusal> {
    const key = await this.rightsOf(document, token);
    if (typeof key === 'string') {
      this.metrics.add('keys_refused');
      return key;
    }
    const [byKey, bySheet] = [this.count(`key ${key.id}`), this.count(`sheet ${document}`)];
    if (
      byKey.open >= this.limits.perKey ||
      bySheet.open >= this.limits.perSheet ||
      byKey.refusals.take(0) > 0
    )
      return 'too-many';
    byKey.open += 1;
    bySheet.open += 1;
    let here = true;
    const left = () => {
      if (!here) return;
      here = false;
      byKey.open -= 1;
      bySheet.open -= 1;
    };
    try {
      if (await this.hasEnded(document)) {
        left();
        return 'sharing-ended';
      }
      const room = await this.room(document);
      if (room.shadow.spoiled !== undefined) {
        left();
        return 'sheet-unreadable';
      }
      return {
        key,
        former: this.parts.keys.idsOf(tokenIn(token)?.former ?? []),
        room,
        take: (messages, bytes) =>
          Math.max(byKey.messages.take(messages), byKey.bytes.take(bytes), bySheet.messages.take(messages)),
        left,
      };
    } catch (error) {
      left();
      if (error instanceof Unreadable) return 'sheet-unreadable';
      throw error;
    }
  }

  refused(key: string): void {
    this.count(`key ${key}`).refusals.take();
  }

  closed(line: Line): void {
    this.lines.delete(line);
  }

  health(): Health {
    let connections = 0;
    for (const line of this.lines) connections += line.documents;
    return {
      storing: this.writer.state,
      sockets: this.lines.size,
      documents: this.opened.size,
      connections,
      waiting: this.writer.waiting,
      ...(this.together && { together: this.together.well }),
    };
  }

  async stop(): Promise<number> {
    this.stopping = true;
    clearInterval(this.timer);
    for (const line of [...this.lines]) line.end(GOING_AWAY);
    const late = new Promise<void>((done) => setTimeout(done, STOPS_WITHIN).unref());
    await Promise.race([this.writer.drained(), late]);
    const left = await this.writer.end();
    for (const room of this.opened.values()) room.end();
    this.together?.stop();
    this.opened.clear();
    this.rooms.clear();
    return left;
  }

  private async rightsOf(document: string, token: string): Promise<KeyRecord | Refusal> {
    const asked = tokenIn(token);
    if (!asked) return 'key-unknown';
    if (asked.edition !== WIRE_EDITION) return asked.edition < WIRE_EDITION ? 'page-old' : 'server-old';
    const key = await this.parts.keys.rightsOf(asked.key);
    if (typeof key === 'string') return key;
    const sheet = sheetOfDocument(document);
    if (sheet === undefined && document !== LIST_DOCUMENT) return 'key-other-sheet';
    return key.sheet === undefined || key.sheet === sheet ? key : 'key-other-sheet';
  }

  /** Whether the sharing of a sheet was ended. One that is not on the list is given out by a link of its own. */
  private async hasEnded(document: string): Promise<boolean> {
    const sheet = sheetOfDocument(document);
    if (sheet === undefined) return false;
    try {
      return (await this.room(LIST_DOCUMENT)).shadow.isEnded(sheet);
    } catch (error) {
      // A list that cannot be read shuts itself alone.
      if (error instanceof Unreadable) return false;
      throw error;
    }
  }

  /** The list has changed: whoever has a sheet open whose sharing was ended is let go. */
  private listed(list: Room): void {
    for (const room of this.opened.values()) {
      const sheet = sheetOfDocument(room.name);
      if (sheet !== undefined && list.shadow.isEnded(sheet)) room.refuseAll('sharing-ended');
    }
  }

  private count(of: string): Count {
    let count = this.counts.get(of);
    if (!count) {
      const { keyRate, sheetRate, keyBytes, refusals } = this.limits;
      count = {
        open: 0,
        messages: new Bucket(of.startsWith('key') ? keyRate : sheetRate),
        bytes: new Bucket(keyBytes),
        refusals: new Bucket({ perSecond: refusals / 60, atOnce: refusals }),
      };
      this.counts.set(of, count);
    }
    return count;
  }

  private room(name: string): Promise<Room> {
    let room = this.rooms.get(name);
    if (!room) {
      room = this.openRoom(name);
      room.catch((error: unknown) => {
        if (!(error instanceof Unreadable)) {
          this.rooms.delete(name);
          return;
        }
        // Looked at again after a while: reading all of it over and over helps nobody.
        console.error(error.message);
        this.together?.leave(name);
        setTimeout(() => this.rooms.delete(name), KEPT_OPEN).unref();
      });
      this.rooms.set(name, room);
    }
    return room;
  }

  private async openRoom(name: string): Promise<Room> {
    const { store, metrics } = this.parts;
    // What is told from here on is heard; what was told before is in the store, or answers the greeting.
    await this.together?.join(name);
    const tell = this.together?.tell.bind(this.together);
    const room = await Room.open(name, { store, metrics, limits: this.limits, writer: this.writer, tell });
    this.opened.set(name, room);
    if (name === LIST_DOCUMENT) room.whenTaken(() => this.listed(room));
    room.greet();
    return room;
  }

  private beat(): void {
    for (const line of [...this.lines]) line.beat(BEAT);
    for (const [name, room] of this.opened) {
      room.expirePresence();
      // The list says which of the others nobody is let in to any more.
      const isNeeded = name === LIST_DOCUMENT && this.opened.size > 1;
      if (
        room.emptyFor() > KEPT_OPEN &&
        room.settled &&
        !isNeeded &&
        this.count(`sheet ${name}`).open === 0
      ) {
        this.opened.delete(name);
        this.rooms.delete(name);
        room.end();
        this.together?.leave(name);
      } else if (this.together && !this.together.well) void room.lookAgain().catch(() => {});
    }
    // Buckets that are full again remember nothing.
    for (const [of, count] of this.counts) if (count.open === 0 && isFull(count)) this.counts.delete(of);
  }

  private tellStoring(): void {
    for (const room of this.opened.values()) room.storingChanged();
  }
}

const isFull = ({ messages, bytes, refusals }: Count): boolean =>
  messages.full && refusals.full && bytes.full;

/** Serves the documents of a shop over WebSockets, as `wire.ts` says. */
export const openSync = (parts: SyncParts): Sync => new Server(parts);
