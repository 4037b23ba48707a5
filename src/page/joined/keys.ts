import type { Shop } from '../../document/storage/shop.ts';
import { readKept, writeKept } from '../kit/kept.ts';

/** Settings of the shop that hold keys: never part of a file. */
const ALL = 'joined';
const ASKED = 'joined.asked';
const FORMER = 'joined.former';
/** As many as the server looks at. */
const MOST_FORMER = 8;
const OF_SHEET = 'joined.sheet.';

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** The key by which this device has joined the shop's server; none where it has not. */
export const keyOfShop = async (shop: Shop): Promise<string | undefined> => {
  const kept = await shop.setting(ALL);
  return isRecord(kept) && typeof kept.key === 'string' ? kept.key : undefined;
};

export const keepKeyOfShop = async (shop: Shop, key: string | undefined): Promise<void> => {
  await keepFormer(shop, await keyOfShop(shop), key);
  await shop.setSetting(ALL, key === undefined ? undefined : { key });
};

const formerKeys = async (shop: Shop): Promise<string[]> => {
  const kept = await shop.setting(FORMER);
  return Array.isArray(kept) ? kept.filter((one) => typeof one === 'string') : [];
};

/**
 * Keys that this device has or had beside one, the last first: what it wrote with them and has not sent is its own still. Those
 * it has count too: one that is about to take their place is asked about before it does.
 */
export const keysBeside = async (shop: Shop, key: string): Promise<string[]> => {
  const sheets = await Promise.all((await idsShared(shop)).map((id) => sharedHere(shop, id)));
  const has = [await keyOfShop(shop), ...sheets.map((shared) => shared?.key)];
  const all = [...has.filter((one) => one !== undefined), ...(await formerKeys(shop))];
  return [...new Set(all)].filter((one) => one !== key);
};

const keepFormer = async (shop: Shop, before: string | undefined, now: string | undefined): Promise<void> => {
  if (before === undefined || before === now) return;
  const others = (await formerKeys(shop)).filter((one) => one !== before);
  await shop.setSetting(FORMER, [before, ...others].slice(0, MOST_FORMER));
};

/** A key that came by a link and has not been used yet. */
export interface Asked {
  key: string;
  sheet?: string;
}

export const keepAsked = (shop: Shop, asked: Asked | undefined) => shop.setSetting(ASKED, asked);

export const askedToJoin = async (shop: Shop): Promise<Asked | undefined> => {
  const kept = await shop.setting(ASKED);
  if (!isRecord(kept) || typeof kept.key !== 'string') return undefined;
  return { key: kept.key, ...(typeof kept.sheet === 'string' && { sheet: kept.sheet }) };
};

/** That a sheet is shared, with what is known of it here. */
export interface SharedHere {
  /** Of its own, where the key opens this sheet alone. */
  key?: string;
  readOnly?: boolean;
  /** The last lost value that was told. */
  told?: number;
  /** Numbers under which this device edits it, the last first, see `Presence.edits`. */
  numbers?: readonly number[];
  /** The lengths it is shown in here, where they were chosen. */
  length?: 'in' | 'mm';
  /** Another device has ended the sharing. */
  off?: boolean;
  /** When it was deleted here, where it is to stay deleted though others go on with it. */
  left?: number;
}

export const sharedHere = async (shop: Shop, id: string): Promise<SharedHere | undefined> => {
  const kept = await shop.setting(OF_SHEET + id);
  return isRecord(kept) ? (kept as SharedHere) : undefined;
};

/** Ids of the sheets that are shared, as far as this browser knows. */
export const idsShared = async (shop: Shop): Promise<string[]> =>
  (await shop.vault.settings()).flatMap(([name, value]) =>
    name.startsWith(OF_SHEET) && isRecord(value) ? [name.slice(OF_SHEET.length)] : [],
  );

export const keepShared = async (shop: Shop, id: string, shared: SharedHere | undefined): Promise<void> => {
  await keepFormer(shop, (await sharedHere(shop, id))?.key, shared?.key);
  await shop.setSetting(OF_SHEET + id, shared);
};

const DEVICE = 'device';

/** The name this device gives itself. */
export const deviceName = (): string => {
  const kept = readKept(DEVICE);
  if (typeof kept === 'string' && kept !== '') return kept;
  return matchMedia('(pointer: coarse)').matches ? 'a phone' : 'a desk';
};

export const nameDevice = (name: string): void => writeKept(DEVICE, name.trim().slice(0, 40) || undefined);
