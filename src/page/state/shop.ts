import { createSignal, onCleanup } from 'solid-js';
import type { ListRow } from '../../document/storage/row.ts';
import type { Shop } from '../../document/storage/shop.ts';

/** What the list of jobs shows. */
export type Shelf = 'jobs' | 'templates' | 'archived' | 'deleted';
export type Order = 'changed' | 'created' | 'title' | 'part' | 'machine' | 'customer';

/** The shop's list as it changes, here and in other tabs. */
export const createShop = (shop: Shop) => {
  const [seen, setSeen] = createSignal(0);
  onCleanup(shop.observeList(() => setSeen((n) => n + 1)));
  const find = (query: string, shelf: Shelf, sort: Order, tags: readonly string[] = []): ListRow[] => {
    seen();
    if (shelf === 'deleted')
      return [
        ...shop.find(query, { removed: true, sort, tags }),
        ...shop.find(query, { removed: true, archived: true, sort, tags }),
      ];
    if (shelf === 'archived') return shop.find(query, { archived: true, sort, tags });
    return shop.find(query, { template: shelf === 'templates', sort, tags });
  };
  /** Marks of all sheets that are not deleted, the commonest first. */
  const marks = (): string[] => {
    seen();
    const counts = new Map<string, number>();
    for (const { title, removed } of shop.list()) {
      if (removed !== undefined) continue;
      for (const tag of title.tags ?? []) counts.set(tag, (counts.get(tag) ?? 0) + 1);
    }
    return [...counts].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([tag]) => tag);
  };
  return {
    shop,
    find,
    marks,
    any: () => {
      seen();
      return shop.list().length > 0;
    },
  };
};

export type ShopState = ReturnType<typeof createShop>;
