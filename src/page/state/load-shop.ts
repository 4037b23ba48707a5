import type { Shop } from '../../document/storage/shop.ts';

let asked: Promise<Shop> | undefined;

/** The shop of this browser, opened once; its code is not needed to read the first page. */
export const loadShop = (): Promise<Shop> => {
  asked ??= Promise.all([import('../../document/storage/open-shop.ts'), import('./printer.ts')])
    .then(([{ openShop }, { printer }]) => openShop(printer))
    .catch((error: unknown) => {
      asked = undefined;
      throw error;
    });
  return asked;
};
