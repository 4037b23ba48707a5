import { searchForm } from '../../../shared/search-form.ts';
import type { ListRow } from './row.ts';

export type SortBy = 'changed' | 'created' | 'title' | 'part' | 'machine' | 'customer';

export interface Wanted {
  template?: boolean;
  /** Archived ones only; left out, those that are not. */
  archived?: boolean;
  /** Deleted ones only; left out, those that are not. */
  removed?: boolean;
  /** All of them. */
  tags?: readonly string[];
  /** Latest first for times, by alphabet for the rest. */
  sort?: SortBy;
}

/** The shop's list in memory, the same in every tab. */
export class ShopList {
  private readonly rows = new Map<string, ListRow>();
  private readonly listeners = new Set<() => void>();
  private readonly sorted = new Map<SortBy, ListRow[]>();
  private readonly channel =
    typeof BroadcastChannel === 'undefined' ? undefined : new BroadcastChannel('fitwright-list');

  /** @param discarded is called when another tab has deleted a sheet for good. */
  constructor(
    rows: readonly ListRow[],
    private readonly discarded: (id: string) => void = () => {},
  ) {
    for (const row of rows) this.rows.set(row.id, row);
    if (this.channel) {
      this.channel.onmessage = ({ data }: MessageEvent<{ id: string; row?: ListRow }>) => {
        this.show(data.id, data.row);
        if (!data.row) this.discarded(data.id);
      };
    }
  }

  get(id: string): ListRow | undefined {
    return this.rows.get(id);
  }

  /** Shows a row that has been stored, here and in the other tabs; without one the sheet is gone. */
  put(id: string, row: ListRow | undefined): void {
    this.show(id, row);
    this.channel?.postMessage({ id, row });
  }

  /** Shows a row in this tab alone: that of a sheet that could not be stored. */
  show(id: string, row: ListRow | undefined): void {
    if (row) this.rows.set(id, row);
    else this.rows.delete(id);
    this.changed();
  }

  /** Shows the rows that the database has now, and those of `open` sheets, which are in memory. */
  replace(rows: readonly ListRow[], open: ReadonlySet<string>): void {
    const stored = new Set(rows.map(({ id }) => id));
    for (const id of this.rows.keys()) if (!stored.has(id) && !open.has(id)) this.rows.delete(id);
    for (const row of rows) this.rows.set(row.id, row);
    this.changed();
  }

  all(): ListRow[] {
    return [...this.rows.values()];
  }

  /** Sheets that hold every word of the query somewhere in title block, labels, names or materials. */
  find(query: string, wanted: Wanted = {}): ListRow[] {
    const words = searchForm(query).split(/\s+/).filter(Boolean);
    const { archived = false, removed = false, tags = [] } = wanted;
    return this.inOrder(wanted.sort ?? 'changed').filter(
      (row) =>
        row.archived === archived &&
        (row.removed !== undefined) === removed &&
        (wanted.template === undefined || row.template === wanted.template) &&
        tags.every((tag) => row.title.tags?.includes(tag)) &&
        words.every((word) => row.search.includes(word)),
    );
  }

  /** Tells of a change of the list. */
  changed(): void {
    this.sorted.clear();
    for (const listener of [...this.listeners]) listener();
  }

  /** Called after every change of the list. */
  observe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  close(): void {
    this.listeners.clear();
    this.channel?.close();
  }

  private inOrder(by: SortBy): ListRow[] {
    let rows = this.sorted.get(by);
    if (!rows) {
      rows = by === 'changed' || by === 'created' ? byTime(this.all(), by) : byText(this.all(), by);
      this.sorted.set(by, rows);
    }
    return rows;
  }
}

const byTime = (rows: ListRow[], by: 'changed' | 'created'): ListRow[] => rows.sort((a, b) => b[by] - a[by]);

const collator = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** Those without the text come last. */
const byText = (rows: ListRow[], by: 'title' | 'part' | 'machine' | 'customer'): ListRow[] =>
  rows.sort((a, b) => {
    const [x, y] = [a.title[by] ?? '', b.title[by] ?? ''];
    return x === '' || y === '' ? y.length - x.length : collator.compare(x, y);
  });
