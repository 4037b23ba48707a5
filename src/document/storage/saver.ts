import * as Y from 'yjs';
import { Observable } from './observable.ts';
import { SAVING, SLOW, type StorageState, stateOf } from './state.ts';

export interface SaverTimes {
  /** Milliseconds after which an unanswered write is called unsaved. */
  slow: number;
  /** Milliseconds until a failed write is tried again; also tried at the next edit. */
  retry: number;
}

const TIMES: SaverTimes = { slow: 8_000, retry: 5_000 };

/**
 * Writes updates one transaction at a time, in order. What failed stays in the queue and goes with the next try, so that
 * an update is never on the disk without those before it.
 */
export class Saver {
  readonly state: Observable<StorageState>;
  private waiting: Uint8Array[] = [];
  private running: Promise<void> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** How many updates have been taken in, and how many of them are stored. */
  private taken = 0;
  private kept = 0;
  private hearers: Array<{ upTo: number; hear: () => void }> = [];

  /**
   * @param store one transaction.
   * @param done state once everything is stored: saved, or that nothing lasts here.
   * @param stored is called with every update that has been stored.
   */
  constructor(
    private readonly store: (update: Uint8Array) => Promise<unknown>,
    private readonly done: StorageState,
    private readonly stored: (update: Uint8Array) => void = () => {},
    private readonly times: SaverTimes = TIMES,
  ) {
    this.state = new Observable(done);
  }

  add(update: Uint8Array): void {
    this.waiting.push(update);
    this.taken += 1;
    // A warning stays until something has been saved again.
    if (this.state.get() === this.done) this.state.set(SAVING);
    void this.flush();
  }

  /** Says that what is stored does not stand, until something has been stored again. */
  warn(state: StorageState): void {
    this.state.set(state);
  }

  /** Gives up what waits. */
  drop(): void {
    clearTimeout(this.timer);
    this.waiting = [];
    this.tell();
  }

  /** Settles once what waits now is stored, or is not going to be soon; undefined where no store is under way. */
  settled(): Promise<void> | undefined {
    if (this.idle || this.state.get() !== SAVING) return undefined;
    const upTo = this.taken;
    return new Promise((hear) => this.hearers.push({ upTo, hear }));
  }

  get idle(): boolean {
    return this.waiting.length === 0;
  }

  /** What is not stored yet, as one update; none where all is. */
  get rest(): Uint8Array | undefined {
    return this.idle ? undefined : Y.mergeUpdates(this.waiting);
  }

  /** Tries to store what waits. Settles when all is stored or a try has failed; see `state`. */
  flush(): Promise<void> {
    this.running ??= this.run().finally(() => {
      this.running = undefined;
    });
    return this.running;
  }

  close(): void {
    clearTimeout(this.timer);
  }

  private tell(upTo = Number.POSITIVE_INFINITY): void {
    const ready = this.hearers.filter((one) => one.upTo <= upTo);
    this.hearers = this.hearers.filter((one) => one.upTo > upTo);
    for (const { hear } of ready) hear();
  }

  private async run(): Promise<void> {
    clearTimeout(this.timer);
    if (this.idle) return;
    while (this.waiting.length > 0) {
      const count = this.waiting.length;
      const update = count === 1 ? this.waiting[0]! : Y.mergeUpdates(this.waiting);
      const slow = setTimeout(() => {
        this.state.set(SLOW);
        this.tell();
      }, this.times.slow);
      try {
        await this.store(update);
      } catch (error) {
        const failed = stateOf(error);
        // With the disk still full the next tries fail at the opening, which does not say why.
        if (this.state.get().state !== 'full' || failed.state !== 'unsaved') this.state.set(failed);
        this.timer = setTimeout(() => void this.flush(), this.times.retry);
        this.tell();
        return;
      } finally {
        clearTimeout(slow);
      }
      this.waiting.splice(0, count);
      this.kept += count;
      this.tell(this.kept);
      this.stored(update);
    }
    this.state.set(this.done);
  }
}
