/**
 * Hands out numbers from 0 and takes them back. Rows and columns of the grid are never moved (adding or removing them
 * makes the next edit slow), so freed ones are used again.
 */
export class SlotPool {
  private next = 0;
  private readonly free: number[] = [];

  take(): number {
    return this.free.pop() ?? this.next++;
  }

  give(slot: number): void {
    this.free.push(slot);
  }
}
