import * as Y from 'yjs';
import { emptyReplica, faultIn } from '../model/stored-fault.ts';
import {
  covers,
  type Lost,
  type Presence,
  presenceIn,
  type RefusedField,
  type ServerSays,
  type Stored,
  sheetDocument,
} from '../sharing/wire.ts';
import type { SheetDocument } from '../sheet-document.ts';
import { Observable } from '../storage/observable.ts';
import type { Connection, Ended, ShopLine } from './shop-line.ts';

/** How a shared sheet stands with the shop's server. */
export interface JoinedState {
  line: 'joining' | 'open' | 'away' | 'ended';
  /** All that this page has of the sheet is stored there: only the server's word for it counts. */
  atServer: boolean;
  readOnly: boolean;
  ended?: Ended;
  /** Where the connection ended because of a field: which. */
  refused?: Omit<RefusedField, 'type'>;
  /** What the server says of its own disk. */
  trouble?: 'full' | 'failing';
}

/** What an update from elsewhere wrote. */
export interface Came {
  /** Numbers of those who wrote it, see `Presence.edits`. */
  clients: readonly number[];
  /** Ids of the lines it is in. */
  cells: readonly string[];
}

const cameIn = (doc: Y.Doc, { changed, beforeState, afterState }: Y.Transaction): Came => {
  const cells = doc.getMap('cells');
  const ids = [...changed].flatMap(([type, keys]) => {
    if ((type as unknown) === cells) return [...keys];
    return type._item?.parent === (cells as unknown) ? [type._item?.parentSub ?? null] : [];
  });
  const clients = [...afterState].filter(([client, clock]) => clock > (beforeState.get(client) ?? 0));
  return {
    clients: clients.map(([client]) => client),
    cells: [...new Set(ids)].filter((id) => id !== null),
  };
};

/** A page tells of several updates together, milliseconds. */
const TOGETHER = 30;
/** Longest wait before the server is asked again whether it has stored what this page has, milliseconds. */
const LONGEST_WAIT = 5000;

/**
 * Keeps an open sheet the same as at the shop's server. What comes is looked at in a document beside the sheet first: what
 * no sheet holds is not applied to what is shown, and ends the connection.
 */
export class JoinedSheet {
  readonly state = new Observable<JoinedState>({ line: 'joining', atServer: false, readOnly: false });
  readonly others = new Observable<readonly Presence[]>([]);
  /**
   * Keeps what was overwritten: a server that is killed before it has stored a value may have passed on what took its place,
   * and would never be able to tell of it if this device had forgotten it too.
   */
  private readonly wire = emptyReplica(false);
  private readonly connection: Connection;
  private readonly stop: () => void;
  private readonly lostListeners = new Set<(lost: Lost) => void>();
  private readonly cameListeners = new Set<(came: Came) => void>();
  private taking = false;
  private mark = 0;
  /** A mark that the server has not been sent yet. */
  private timer: ReturnType<typeof setTimeout> | undefined;
  private stored: Stored | undefined;
  private wait = TOGETHER;
  private isAgain = false;
  private synced = false;

  /** @param receive applies and stores here what has come. */
  constructor(
    line: ShopLine,
    private readonly sheet: SheetDocument,
    receive: (update: Uint8Array) => void,
  ) {
    Y.applyUpdate(this.wire, sheet.updateSince(), 'here');
    this.wire.on('update', (update: Uint8Array, origin: unknown, _doc: Y.Doc, transaction: Y.Transaction) => {
      if (origin === 'here') {
        this.markLater();
        return;
      }
      if (faultIn(this.wire, transaction) !== undefined) {
        this.connection.end('unsound');
        return;
      }
      this.taking = true;
      try {
        receive(update);
      } finally {
        this.taking = false;
      }
      const came = cameIn(this.wire, transaction);
      for (const listener of [...this.cameListeners]) listener(came);
    });
    this.stop = sheet.onUpdate((update) => {
      if (!this.taking && !this.state.get().readOnly && this.state.get().line !== 'ended')
        Y.applyUpdate(this.wire, update, 'here');
    });
    this.connection = line.connect(sheetDocument(sheet.id), this.wire, {
      open: (readOnly) => {
        this.set({ line: 'open', readOnly });
        this.meetAgain();
      },
      synced: () => {
        this.synced = true;
        this.markLater();
      },
      away: () => {
        this.synced = false;
        this.stored = undefined;
        this.set({ line: 'away', atServer: false });
        this.others.set([]);
      },
      ended: (ended) => {
        clearTimeout(this.timer);
        this.set({ line: 'ended', atServer: false, ended });
        this.others.set([]);
      },
      said: (what) => this.hear(what),
      presence: () => this.lookRound(),
    });
  }

  /** Says where this device is on the sheet. */
  tell(presence: Presence): void {
    const state = { ...presence, edits: this.sheet.clientId };
    this.connection.provider.awareness?.setLocalState(state);
  }

  onLost(listener: (lost: Lost) => void): () => void {
    this.lostListeners.add(listener);
    return () => this.lostListeners.delete(listener);
  }

  /** Hears what came from elsewhere, once it is shown. */
  onCame(listener: (came: Came) => void): () => void {
    this.cameListeners.add(listener);
    return () => this.cameListeners.delete(listener);
  }

  close(): void {
    clearTimeout(this.timer);
    this.stop();
    this.connection.close();
    queueMicrotask(() => this.wire.destroy());
  }

  private set(part: Partial<JoinedState>): void {
    this.state.set({ ...this.state.get(), ...part });
  }

  private markLater(wait = TOGETHER): void {
    if (this.state.get().atServer) this.set({ atServer: false });
    // An edit of this page is not kept waiting by a question that is put once more.
    if (!this.synced || (this.timer !== undefined && !this.isAgain)) return;
    clearTimeout(this.timer);
    this.isAgain = wait > TOGETHER;
    this.timer = setTimeout(() => {
      this.timer = undefined;
      if (!this.synced) return;
      this.mark += 1;
      this.connection.send({ mark: this.mark });
    }, wait);
  }

  private hear(what: ServerSays): void {
    if (what.type === 'lost') {
      for (const listener of [...this.lostListeners]) listener(what);
      return;
    }
    if (what.type === 'storing') {
      const { trouble: _trouble, ...rest } = this.state.get();
      this.state.set(what.state === 'well' ? rest : { ...rest, trouble: what.state });
      return;
    }
    if (what.type === 'refused') {
      const { type: _type, ...refused } = what;
      this.set({ refused });
      return;
    }
    this.stored = what;
    const at =
      this.synced &&
      this.timer === undefined &&
      this.stored.mark === this.mark &&
      covers(this.stored, this.sheet.stateVector());
    if (at !== this.state.get().atServer) this.set({ atServer: at });
    // What another wrote may have come here before it was stored there: it is asked again, or this would never be told.
    if (at) this.wait = TOGETHER;
    else if (this.stored.mark === this.mark) {
      this.markLater(this.wait);
      this.wait = Math.min(2 * this.wait, LONGEST_WAIT);
    }
  }

  /**
   * What is said of a device counts once it is newer than what was heard of it before. After a lost line this device says its
   * own anew, and has heard nothing of the others: not at the next sign of life only, up to 15 seconds later.
   */
  private meetAgain(): void {
    const { awareness } = this.connection.provider;
    if (!awareness) return;
    for (const client of [...awareness.meta.keys()])
      if (client !== awareness.clientID && !awareness.states.has(client)) awareness.meta.delete(client);
    awareness.setLocalState(awareness.getLocalState());
  }

  private lookRound(): void {
    const { awareness } = this.connection.provider;
    if (!awareness) return;
    const states = [...awareness.getStates()].filter(([client]) => client !== this.wire.clientID);
    this.others.set(states.flatMap(([, state]) => presenceIn(state) ?? []));
  }
}
