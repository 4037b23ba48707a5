import { LOST_KEPT } from '../../document/sharing/wire.ts';
import type { KeptLost } from '../store/store.ts';

/** Milliseconds for which lost values are gathered. */
const TOLD_AFTER = 250;

/** The values of a document that did not remain, from when they are stored until everybody is told. */
export class LostValues {
  private readonly gathered = new Map<string, KeptLost>();
  private timer: NodeJS.Timeout | undefined;

  constructor(
    private known: readonly KeptLost[],
    private readonly tell: (one: KeptLost) => void,
  ) {}

  /** The last of them, for whoever comes. */
  get last(): readonly KeptLost[] {
    return this.known;
  }

  /** @returns whether it is a new one */
  keep(kept: KeptLost): boolean {
    if (this.known.some(({ lost }) => lost.n === kept.lost.n)) return false;
    const others = this.known.filter(({ place }) => place !== kept.place);
    this.known = [...others, kept].slice(-LOST_KEPT);
    return true;
  }

  /** Somebody who comes back brings what they wrote one by one: the last of a field is told, and once. */
  tellLater(kept: KeptLost): void {
    this.gathered.set(kept.place, kept);
    this.timer ??= setTimeout(() => this.tellNow(), TOLD_AFTER);
  }

  tellNow(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    const gathered = [...this.gathered.values()];
    this.gathered.clear();
    for (const one of gathered) this.tell(one);
  }
}
