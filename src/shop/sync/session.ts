import { type KeyRecord, markIn, type Refusal, type RefusedField } from '../../document/sharing/wire.ts';
import { type Frame, frames } from './frames.ts';
import { entriesIn } from './presence.ts';
import type { Member, Room } from './room.ts';

/** What a session needs of the socket it goes over. */
export interface Over {
  send(frame: Uint8Array): void;
  /** Does it. Whatever goes wrong ends the socket. */
  guarded(work: () => void): void;
  /** Ends the socket: a message was none of this protocol. */
  malformed(): void;
  /** The session has ended, and why. */
  ended(session: Session, why?: Refusal): void;
}

/** One document that is open over one socket. */
export class Session implements Member {
  readonly holds: ReadonlySet<string>;
  private asked = false;
  private over = false;

  constructor(
    private readonly room: Room,
    private readonly key: KeyRecord,
    former: readonly string[],
    private readonly line: Over,
  ) {
    this.holds = new Set([key.id, ...former]);
  }

  /** Lets it in, and sends it what is there. */
  begin(): void {
    const { room, key } = this;
    this.send(frames.authenticated(room.name, key.readOnly));
    // Before anything is told: what a page wrote and another overwrote is forgotten by the page once it hears of it. Whoever
    // only reads is asked for nothing, and so has nothing to be refused for.
    if (!key.readOnly) this.ask();
    room.enter(this);
  }

  get keyId(): string {
    return this.key.id;
  }

  /** What a message costs, in messages: what makes the server read a whole document counts for more. */
  cost(frame: Frame): number {
    return frame.is === 'ask' ? 1 + Math.ceil(this.room.shadow.bytes / 50_000) : 1;
  }

  send(frame: Uint8Array): void {
    this.line.send(frame);
  }

  take(frame: Frame): void {
    if (this.over) return;
    const { room } = this;
    switch (frame.is) {
      case 'ask':
        this.answer(frame.vector);
        break;
      case 'update':
        this.update(frame.update, frame.answer);
        break;
      case 'presence': {
        const entries = entriesIn(frame.entries);
        if (entries) room.takePresence(entries, this);
        else this.line.malformed();
        break;
      }
      case 'query-presence':
        this.send(frames.presence(room.name, room.presenceOf()));
        break;
      case 'said': {
        const mark = markIn(frame.payload);
        // What a later edition of the page may say beside marks is not for this one.
        if (mark !== undefined) this.whenStored(() => this.send(frames.said(room.name, room.storedAt(mark))));
        break;
      }
      case 'close':
        this.end();
        break;
      default:
        this.line.malformed();
    }
  }

  /** @param field what it is refused for, where that is known */
  refuse(why: Refusal, field?: RefusedField): void {
    if (this.over) return;
    if (field && (field.cell !== undefined || field.key !== undefined))
      this.send(frames.said(this.room.name, field));
    this.send(frames.close(this.room.name, why));
    this.end(why);
  }

  end(why?: Refusal): void {
    if (this.over) return;
    this.over = true;
    this.room.leave(this);
    this.line.ended(this, why);
  }

  private answer(vector: Uint8Array): void {
    const { room } = this;
    let missing: Uint8Array;
    try {
      missing = room.shadow.state(vector);
    } catch {
      this.line.malformed();
      return;
    }
    room.whenPassed(() => {
      if (!this.over) this.line.guarded(() => this.send(frames.answer(room.name, missing)));
    });
  }

  ask(): void {
    if (this.asked || this.over) return;
    this.asked = true;
    this.send(frames.ask(this.room.name, this.room.shadow.doc));
  }

  private update(update: Uint8Array, answer: boolean): void {
    const { room } = this;
    if (this.key.readOnly) {
      if (update.some((byte) => byte !== 0)) this.refuse('key-reads-only');
      return;
    }
    const taken = room.take(update, this, !answer);
    if ('refusal' in taken) {
      this.refuse(taken.refusal, taken.field);
      return;
    }
    if (answer) this.asked = false;
    // What was left out comes again: by the answer that is under way, or by one that is asked for now.
    if (taken.early && !answer) this.ask();
    this.whenStored(() => this.send(frames.taken(room.name)));
  }

  private whenStored(then: () => void): void {
    this.room.whenStored(() => {
      if (!this.over) this.line.guarded(then);
    });
  }
}
