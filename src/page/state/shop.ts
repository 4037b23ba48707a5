import { createSignal, onCleanup } from 'solid-js';
import type { ListRow } from '../../document/storage/row.ts';
import type { Shop } from '../../document/storage/shop.ts';

/** What the list of jobs shows. */
export type Shelf = 'jobs' | 'templates' | 'archived' | 'deleted';
export type Order = 'changed' | 'title' | 'machine' | 'customer';

/** The shop's list as it changes, here and in other tabs. */
export const createShop = (shop: Shop) => {
  const [seen, setSeen] = createSignal(0);
  onCleanup(shop.observeList(() => setSeen((n) => n + 1)));
  const find = (query: string, shelf: Shelf, sort: Order): ListRow[] => {
    seen();
    if (shelf === 'deleted')
      return [
        ...shop.find(query, { removed: true, sort }),
        ...shop.find(query, { removed: true, archived: true, sort }),
      ];
    if (shelf === 'archived') return shop.find(query, { archived: true, sort });
    return shop.find(query, { template: shelf === 'templates', sort });
  };
  return {
    shop,
    find,
    any: () => {
      seen();
      return shop.list().length > 0;
    },
  };
};

export type ShopState = ReturnType<typeof createShop>;
