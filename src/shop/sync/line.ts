import type { Duplex } from 'node:stream';
import type { RawData, WebSocket } from 'ws';
import { CLOSED, type KeyRecord, type Refusal } from '../../document/sharing/wire.ts';
import { Bucket } from '../base/bucket.ts';
import type { Limits } from '../base/limits.ts';
import type { Metrics } from '../base/metrics.ts';
import { wordsOf } from '../base/words.ts';
import { type Frame, frames, readFrame } from './frames.ts';
import type { Room } from './room.ts';
import { type Over, Session } from './session.ts';

/** What a line needs of the server. */
export interface Hub {
  readonly limits: Limits;
  readonly metrics: Metrics;
  /** Bytes that wait to be stored. */
  readonly unstored: number;
  /** Looks a token up. */
  admit(document: string, token: string): Promise<Admitted | Refusal>;
  /** A key's update was refused. */
  refused(key: string): void;
  closed(line: Line): void;
}

export interface Admitted {
  key: KeyRecord;
  /** Ids of keys it had before. */
  former: readonly string[];
  room: Room;
  /** Counts what comes with the key and to the sheet. @returns milliseconds to wait */
  take(messages: number, bytes: number): number;
  /** Whoever was admitted has left. */
  left(): void;
}

/** A document whose key is being looked up. What comes meanwhile waits. */
interface Opening {
  waiting: Frame[];
  bytes: number;
  over: boolean;
}

/** Codes of a closed socket after which a page comes back by itself. */
const TRY_AGAIN = 1013;

/** How long a closed socket may take to say so too. */
const CLOSES_WITHIN = 1000;

/** Milliseconds after which a pause is looked at again. */
const BACKLOG_WAIT = 100;

/** One WebSocket of a page, over which it opens documents. */
export class Line implements Over {
  private readonly open = new Map<string, { session: Session; admitted: Admitted }>();
  private readonly opening = new Map<string, Opening>();
  private readonly bucket: Bucket;
  private readonly keyTimer: NodeJS.Timeout;
  private came = 0;
  private holds = 0;
  private waitingBytes = 0;
  private over = false;
  /** Whether a key was asked about, refused, or taken. */
  private key: 'none' | 'asked' | 'refused' | 'taken' = 'none';
  private sentAt = performance.now();
  private answered = true;

  constructor(
    private readonly socket: WebSocket,
    raw: Duplex,
    readonly address: string,
    private readonly hub: Hub,
  ) {
    const { limits } = hub;
    this.bucket = new Bucket(limits.socketRate);
    socket.on('message', (data: RawData, binary) => this.guarded(() => this.message(data, binary)));
    socket.on('pong', () => {
      this.answered = true;
    });
    // The library closes the socket with a code of its own.
    socket.on('error', () => hub.metrics.add('sockets_refused'));
    socket.on('close', () => this.gone());
    // Before the library, which puts a message together however long it grows.
    raw.prependListener('data', (chunk: Buffer) => {
      if (this.key === 'taken') return;
      this.came += chunk.length;
      if (this.came > limits.beforeKey) this.end(CLOSED.unauthenticated);
      if (this.came > 4 * limits.beforeKey) this.socket.terminate();
    });
    this.keyTimer = setTimeout(() => {
      // A slow network is no fault of the page: it comes back. One whose key was refused does not.
      if (this.key !== 'taken') this.end(this.key === 'none' ? TRY_AGAIN : CLOSED.unauthenticated);
    }, limits.keyWithin);
  }

  get withoutKey(): boolean {
    return this.key !== 'taken';
  }

  get documents(): number {
    return this.open.size;
  }

  send(frame: Uint8Array): void {
    if (this.over) return;
    // Whoever does not read is let go, and catches up when it comes back.
    if (this.socket.bufferedAmount > this.hub.limits.backlog) {
      this.socket.terminate();
      return;
    }
    this.sentAt = performance.now();
    this.socket.send(frame);
  }

  /** Whatever goes wrong over a message ends the line it came over, and nothing else: neither the process nor other lines. */
  guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      console.error(`A message could not be taken (${wordsOf(error)}); the line it came over is closed.`);
      this.malformed();
    }
  }

  malformed(): void {
    this.end(CLOSED.malformed);
  }

  /** Closes the socket with a code. */
  end(code: number): void {
    if (this.over) return;
    this.over = true;
    if (code >= 4000) this.hub.metrics.add('sockets_refused');
    this.letGo();
    this.socket.close(code);
    setTimeout(() => this.socket.terminate(), CLOSES_WITHIN).unref();
  }

  ended(session: Session, why?: Refusal): void {
    for (const [name, one] of this.open)
      if (one.session === session) {
        this.open.delete(name);
        one.admitted.left();
      }
    if (why === 'update-refused') this.hub.refused(session.keyId);
  }

  refuseKeys(ids: ReadonlySet<string>): void {
    for (const { session } of [...this.open.values()])
      if (ids.has(session.keyId)) session.refuse('key-ended');
  }

  /** Looks whether the other side is there, and tells it that this one is: every few seconds. */
  beat(quiet: number): void {
    if (this.over || this.key !== 'taken') return;
    if (!this.answered) {
      this.socket.terminate();
      return;
    }
    this.answered = false;
    this.socket.ping();
    // A page takes a line for lost on which no message comes; this one says nothing.
    const [name] = this.open.keys();
    if (name !== undefined && performance.now() - this.sentAt > quiet)
      this.send(frames.presence(name, new Uint8Array([0])));
  }

  private message(data: RawData, binary: boolean): void {
    if (this.over) return;
    // A copy that owns its buffer: a length that lies must not read what lies beside it in memory.
    const bytes = new Uint8Array(data as Buffer);
    const read = binary && bytes.length <= this.hub.limits.message * 2 ? readFrame(bytes) : undefined;
    if (!read || read.document.length > 80) {
      this.malformed();
      return;
    }
    const { document, frame } = read;
    if (frame.is === 'token') {
      this.begin(document, frame.token);
      this.pace(this.bucket.take());
      return;
    }
    const open = this.open.get(document);
    if (open) {
      const cost = open.session.cost(frame);
      this.pace(Math.max(this.bucket.take(cost), open.admitted.take(cost, bytes.length)));
      if (bytes.length > this.hub.limits.message) open.session.refuse('sheet-full');
      else open.session.take(frame);
      return;
    }
    const opening = this.opening.get(document);
    if (opening) this.wait(opening, frame, bytes.length);
    // Of a document that was closed to the page; what it sent before it heard of that is let fall.
    else if (this.key === 'none') this.end(CLOSED.unauthenticated);
    this.pace(this.bucket.take());
  }

  private wait(opening: Opening, frame: Frame, bytes: number): void {
    if (frame.is === 'close') {
      opening.over = true;
      return;
    }
    opening.waiting.push(frame);
    const before = this.waitingBytes;
    opening.bytes += bytes;
    this.waitingBytes += bytes;
    const { waiting } = this.hub.limits;
    if (before <= waiting && this.waitingBytes > waiting) this.hold();
  }

  private waited(opening: Opening): void {
    const before = this.waitingBytes;
    this.waitingBytes -= opening.bytes;
    const { waiting } = this.hub.limits;
    if (before > waiting && this.waitingBytes <= waiting) this.release();
  }

  private begin(document: string, token: string): void {
    if (this.key === 'none') this.key = 'asked';
    const before = this.opening.get(document);
    if (before) before.over = true;
    this.open.get(document)?.session.end();
    if (this.open.size + this.opening.size >= this.hub.limits.perSocket) {
      this.send(frames.denied(document, 'too-many'));
      return;
    }
    const opening: Opening = { waiting: [], bytes: 0, over: false };
    this.opening.set(document, opening);
    this.hub
      .admit(document, token)
      .then((admitted) => this.admitted(document, opening, admitted))
      // The store does not answer: the page comes back.
      .catch(() => this.end(TRY_AGAIN))
      .finally(() => {
        if (this.opening.get(document) === opening) this.opening.delete(document);
        this.waited(opening);
      });
  }

  private admitted(document: string, opening: Opening, admitted: Admitted | Refusal): void {
    if (typeof admitted === 'string') {
      if (this.key === 'asked') this.key = 'refused';
      if (!this.over && !opening.over) this.send(frames.denied(document, admitted));
      return;
    }
    if (this.over || opening.over) {
      admitted.left();
      return;
    }
    this.key = 'taken';
    clearTimeout(this.keyTimer);
    this.opening.delete(document);
    const session = new Session(admitted.room, admitted.key, admitted.former, this);
    this.open.set(document, { session, admitted });
    this.guarded(() => {
      session.begin();
      for (const frame of opening.waiting) session.take(frame);
    });
  }

  /** Reads no further until it is time, and while too much waits to be stored. */
  private pace(wait: number): void {
    const full = this.hub.unstored > this.hub.limits.backlog;
    if ((wait <= 0 && !full) || this.over) return;
    this.hub.metrics.add('paused');
    this.hold();
    const look = () => {
      if (!this.over && this.hub.unstored > this.hub.limits.backlog) setTimeout(look, BACKLOG_WAIT);
      else this.release();
    };
    setTimeout(look, Math.max(wait, full ? BACKLOG_WAIT : 0));
  }

  private hold(): void {
    if (this.holds === 0) this.socket.pause();
    this.holds += 1;
  }

  private release(): void {
    this.holds -= 1;
    if (this.holds === 0) this.socket.resume();
  }

  private letGo(): void {
    clearTimeout(this.keyTimer);
    for (const opening of this.opening.values()) opening.over = true;
    for (const { session } of [...this.open.values()]) session.end();
  }

  private gone(): void {
    this.over = true;
    this.letGo();
    this.hub.closed(this);
  }
}
