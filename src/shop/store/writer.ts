import type { Storing } from '../../document/sharing/wire.ts';
import type { Metrics } from '../base/metrics.ts';
import { wordsOf } from '../base/words.ts';
import type { Addition, KeptLost, Store } from './store.ts';

interface Waiting extends Addition {
  stored(lost: readonly KeptLost[]): void;
}

/** Waits between tries, milliseconds. */
const FIRST_WAIT = 250;
const LONGEST_WAIT = 5000;

/** At most so many updates in one transaction. */
const TOGETHER = 500;

/** Appends updates to the store: what has come while one transaction was under way goes together into the next. */
export class Writer {
  private queue: Waiting[] = [];
  private working: Promise<void> | undefined;
  private ended = false;
  private endWait: (() => void) | undefined;
  /** Whether it can store. */
  state: Storing['state'] = 'well';
  /** Bytes not yet stored. */
  bytes = 0;

  /** @param changed is called when it can no longer store, and when it can again. */
  constructor(
    private readonly store: Store,
    private readonly metrics: Metrics,
    private readonly changed: () => void,
  ) {}

  get waiting(): number {
    return this.queue.length;
  }

  /** @param stored is called once it is committed. */
  append(addition: Addition, stored: Waiting['stored']): void {
    this.queue.push({ ...addition, stored });
    this.bytes += addition.update?.length ?? 0;
    this.working ??= this.work();
  }

  /** Resolves when nothing waits; at once where the store does not take it and the server ends. */
  async drained(): Promise<void> {
    while (this.working && !this.ended) await this.working;
  }

  /** Ends the waiting for a store that takes nothing. One more try is made. @returns how many updates were not stored. */
  async end(): Promise<number> {
    this.ended = true;
    this.endWait?.();
    await this.working;
    return this.queue.length;
  }

  private async work(): Promise<void> {
    let wait = FIRST_WAIT;
    while (this.queue.length > 0) {
      const batch = this.queue.slice(0, TOGETHER);
      let told: KeptLost[][];
      try {
        told = await this.store.append(batch);
      } catch (error) {
        this.metrics.add('commits_failed');
        this.tell(this.store.database.isFull(error) ? 'full' : 'failing', error);
        if (this.ended) break;
        await this.pause(wait);
        wait = Math.min(wait * 2, LONGEST_WAIT);
        continue;
      }
      this.metrics.add('commits');
      this.queue = this.queue.slice(batch.length);
      wait = FIRST_WAIT;
      for (const [i, { update, stored }] of batch.entries()) {
        this.bytes -= update?.length ?? 0;
        try {
          stored(told[i] ?? []);
        } catch (error) {
          // It is stored; who could not be told of it asks again.
          console.error(`What was stored could not be told (${wordsOf(error)}).`);
        }
      }
      this.tell('well');
    }
    // At once, not in a later turn: what is appended from here on starts anew.
    this.working = undefined;
  }

  private tell(state: Storing['state'], error?: unknown): void {
    if (state === this.state) return;
    this.state = state;
    console.error(
      state === 'well'
        ? 'The store takes updates again.'
        : `Updates cannot be stored (${wordsOf(error)}); it is tried again.`,
    );
    this.changed();
  }

  private pause(wait: number): Promise<void> {
    return new Promise((done) => {
      const timer = setTimeout(done, wait);
      this.endWait = () => {
        clearTimeout(timer);
        done();
      };
    });
  }
}
