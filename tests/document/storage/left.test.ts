import { beforeEach, describe, expect, it, vi } from 'vitest';
import { leave } from '../../../src/document/storage/left.ts';
import { bushJob } from '../sample.ts';
import { opened, refuseWrites, useShops } from './shops.ts';

const newShop = useShops();

/** As a browser has it: what is kept stands as its own properties. */
const storage = () =>
  Object.defineProperties({} as Record<string, string>, {
    setItem: {
      value(this: Record<string, string>, key: string, text: string) {
        this[key] = text;
      },
    },
    getItem: {
      value(this: Record<string, string>, key: string) {
        return this[key] ?? null;
      },
    },
    removeItem: {
      value(this: Record<string, string>, key: string) {
        delete this[key];
      },
    },
  });
let kept: Record<string, string>;
const putAside = () => Object.keys(kept).filter((key) => key.startsWith('fitwright-left-'));
beforeEach(() => {
  kept = storage();
  vi.stubGlobal('localStorage', kept);
  return () => vi.unstubAllGlobals();
});

describe('what is not stored as the page goes', () => {
  it('is in the sheet when it is next opened, and stored then', async () => {
    const first = await newShop();
    const id = await first.create(bushJob());
    const sheet = opened(await first.open(id));
    const refused = refuseWrites();
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.retry();
    first.leave();
    refused.mockRestore();

    const second = await newShop();
    const again = opened(await second.open(id));
    expect(again.document.cell('c3')?.entry).toBe('2.26 in');
    await again.close();
    expect(putAside()).toEqual([]);
    expect(opened(await (await newShop()).open(id)).document.cell('c3')?.entry).toBe('2.26 in');
  });

  it('stays put aside while it cannot be stored', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    const sheet = opened(await shop.open(id));
    refuseWrites();
    sheet.document.setEntry('c3', '2.26 in');
    await sheet.retry();
    shop.leave();
    await opened(await (await newShop()).open(id)).close();
    expect(putAside()).toHaveLength(1);
  });

  it('is nothing where all is stored, and goes with a sheet that is deleted for good', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    await shop.open(id);
    shop.leave();
    expect(putAside()).toEqual([]);
    leave(id, Uint8Array.of(1));
    leave('another', Uint8Array.of(1));
    await shop.discard(id);
    expect(putAside()).toHaveLength(1);
  });

  it('does no harm where it is damaged', async () => {
    const shop = await newShop();
    const id = await shop.create(bushJob());
    leave(id, Uint8Array.of(7, 7, 7));
    const sheet = opened(await shop.open(id));
    expect(sheet.document.cells()).toHaveLength(bushJob().cells.length);
    await sheet.close();
    expect(sheet.state().state).toBe('saved');
  });

  it('is not asked for where the browser refuses even this', async () => {
    vi.stubGlobal('localStorage', undefined);
    const shop = await newShop();
    const id = await shop.create(bushJob());
    opened(await shop.open(id)).document.setEntry('c3', '2.26 in');
    expect(() => shop.leave()).not.toThrow();
    expect(await shop.discard(id)).toMatchObject({ state: 'saved' });
  });
});
