/** A value with listeners; they hear of a value that is another than before. */
export class Observable<T> {
  private readonly listeners = new Set<(value: T) => void>();

  constructor(private value: T) {}

  get(): T {
    return this.value;
  }

  set(value: T): void {
    if (value === this.value) return;
    this.value = value;
    for (const listener of [...this.listeners]) listener(value);
  }

  /** @returns a function that ends it. */
  observe(listener: (value: T) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
