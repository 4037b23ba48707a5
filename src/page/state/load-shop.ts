import type { Shop } from '../../document/storage/shop.ts';

let asked: Promise<Shop> | undefined;

/** The shop of this browser, opened once; its code is not needed to read the first page. */
export const loadShop = (): Promise<Shop> => {
  asked ??= import('../../document/storage/open-shop.ts')
    .then(({ openShop }) => openShop())
    .catch((error: unknown) => {
      asked = undefined;
      throw error;
    });
  return asked;
};
