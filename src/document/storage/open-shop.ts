import { DiskVault } from './disk-vault.ts';
import { MemoryVault } from './memory-vault.ts';
import type { Printer } from './printer.ts';
import { Shop } from './shop.ts';
import { REFUSED, SAVED, type StorageState, stateOf } from './state.ts';

/** Milliseconds. Some browsers never answer in a private window, or while another tab holds an old database open. */
const PATIENCE = 6_000;

/** Opens the shop of this browser. Never fails: where nothing can be kept it is one in memory, whose `state` says why. */
export async function openShop(printer: Printer, options: { patience?: number } = {}): Promise<Shop> {
  const inMemory = (message: string) =>
    new Shop(new MemoryVault(), [], { state: 'refused', message }, printer);
  if (!hasDatabase()) return inMemory(REFUSED.missing);
  const disk = new DiskVault();
  const opening = disk.rows();
  opening.catch(() => {}); // it may still fail after the patience is over
  const answer = await Promise.race([
    opening.catch((error: unknown) => refusal(error)),
    after(options.patience ?? PATIENCE),
  ]);
  if (Array.isArray(answer)) {
    const shop = new Shop(disk, answer, SAVED, printer);
    // A reload right behind an entry comes before the database has taken it.
    if (typeof addEventListener === 'function') addEventListener('pagehide', () => shop.leave());
    void shop.takeInLeft();
    return shop;
  }
  disk.close();
  return inMemory(answer.message ?? REFUSED.refused);
}

function hasDatabase(): boolean {
  try {
    return typeof indexedDB !== 'undefined' && indexedDB !== null;
  } catch {
    return false; // some browsers throw at the mere mention
  }
}

function refusal(error: unknown): StorageState {
  const state = stateOf(error);
  return state.state === 'unsaved' ? { state: 'refused', message: REFUSED.refused } : state;
}

const after = (patience: number): Promise<StorageState> =>
  new Promise((settle) => {
    const timer = setTimeout(() => settle({ state: 'refused', message: REFUSED.silent }), patience);
    (timer as { unref?: () => void }).unref?.();
  });
