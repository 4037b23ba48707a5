import type { ShopLine } from '../../document/joined/shop-line.ts';
import { loadShop } from '../state/load-shop.ts';
import { keysBeside } from './keys.ts';

const lines = new Map<string, Promise<ShopLine>>();

/** The line to the server this page came from, one a key; its code is fetched when it is first used. */
export const lineOf = (key: string): Promise<ShopLine> => {
  let line = lines.get(key);
  if (!line) {
    line = (async () => {
      const [{ ShopLine, lineAddress }, former] = await Promise.all([
        import('../../document/joined/shop-line.ts'),
        loadShop().then((shop) => keysBeside(shop, key)),
      ]);
      return new ShopLine(lineAddress(location.href), key, former);
    })();
    line.catch(() => lines.delete(key));
    lines.set(key, line);
  }
  return line;
};

/** Begins the line anew, as after a key was refused. */
export const dropLine = (key: string): void => {
  void lines.get(key)?.then((line) => line.close());
  lines.delete(key);
};

const holders = new Map<string, () => void>();

/**
 * Takes a sheet's connection for one who shows it: a line carries one connection a sheet, so whoever had it lets go.
 * @returns a function that gives it back
 */
export const holdSheet = (id: string, letGo: () => void): (() => void) => {
  holders.get(id)?.();
  holders.set(id, letGo);
  return () => {
    if (holders.get(id) === letGo) holders.delete(id);
  };
};

export const isHeld = (id: string): boolean => holders.has(id);
