interface Due {
  upTo: number;
  then: () => void;
}

/** What waits for the updates of a document to be stored: counted as they come, and committed in that order. */
export class Commits {
  private appended = 0;
  private committed = 0;
  private stored: Due[] = [];
  private passed: Due[] = [];

  /** @param isWell whether the store takes updates */
  constructor(private readonly isWell: () => boolean) {}

  /** All that came is in the store. */
  get settled(): boolean {
    return this.appended === this.committed;
  }

  /** One more update is on its way to the store. @returns what to call once it is there; `before` goes before all that waits */
  add(): (before: () => void) => void {
    this.appended += 1;
    const n = this.appended;
    return (before) => {
      this.committed = n;
      before();
      this.pass(n);
      const due = this.stored.filter(({ upTo }) => upTo <= n);
      this.stored = this.stored.slice(due.length);
      for (const { then } of due) then();
    };
  }

  /** Calls `then` when all that has come so far is in the store. */
  whenStored(then: () => void): void {
    if (this.settled) then();
    else this.stored.push({ upTo: this.appended, then });
  }

  /**
   * Calls `then` when what has come so far may be told to others: once it is stored, so that nobody hears of what would be gone
   * if the server were killed. A device forgets a value once it hears of the one that took its place. At once where the store
   * takes nothing, so that work goes on meanwhile.
   */
  whenPassed(then: () => void): void {
    if (this.settled || !this.isWell()) then();
    else this.passed.push({ upTo: this.appended, then });
  }

  /** The store takes nothing more, or takes it again. */
  changed(): void {
    if (!this.isWell()) this.pass(Number.POSITIVE_INFINITY);
  }

  private pass(upTo: number): void {
    const due = this.passed.filter((one) => one.upTo <= upTo);
    this.passed = this.passed.slice(due.length);
    for (const { then } of due) then();
  }
}
