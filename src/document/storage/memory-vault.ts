import type { ListRow, RowChange } from './row.ts';
import type { Addition, Revision, Vault } from './vault.ts';

/** Keeps a shop for as long as the page is open, where the browser keeps nothing. */
export class MemoryVault implements Vault {
  private readonly list = new Map<string, ListRow>();
  private readonly stored = new Map<string, Uint8Array[]>();
  private readonly past = new Map<string, Revision[]>();
  private readonly kept = new Map<string, unknown>();

  async rows() {
    return [...this.list.values()];
  }

  async changeRow(id: string, change: RowChange) {
    const row = change(this.list.get(id));
    if (row) this.list.set(id, row);
    else this.list.delete(id);
    return row;
  }

  async updates(sheet: string) {
    return { updates: [...(this.stored.get(sheet) ?? [])] };
  }

  async append(sheet: string, { update, whole }: Addition, change: RowChange) {
    // Only what was deleted for good, in this very tab, is not there any more.
    const before = this.stored.get(sheet);
    const updates = before ? [...before, update] : [whole()];
    this.stored.set(sheet, updates);
    await this.changeRow(sheet, change);
    return { count: updates.length, base: undefined };
  }

  async compact(sheet: string, merge: (updates: Uint8Array[]) => Uint8Array) {
    const updates = this.stored.get(sheet);
    if (updates) this.stored.set(sheet, [merge(updates)]);
  }

  async discard(sheet: string) {
    for (const map of [this.list, this.stored, this.past]) map.delete(sheet);
  }

  async addRevision(revision: Omit<Revision, 'n'>) {
    const past = this.past.get(revision.sheet) ?? [];
    const added = { ...revision, n: past.length + 1 };
    this.past.set(revision.sheet, [...past, added]);
    return added;
  }

  async revisions(sheet: string) {
    return [...(this.past.get(sheet) ?? [])];
  }

  async setting(key: string) {
    return this.kept.get(key);
  }

  async settings() {
    return [...this.kept];
  }

  async changeSetting(key: string, change: (now: unknown) => unknown) {
    this.kept.set(key, change(this.kept.get(key)));
  }

  onLoss() {
    return () => {};
  }

  close() {}
}
