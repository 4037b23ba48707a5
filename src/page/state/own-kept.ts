import { createResource, createSignal } from 'solid-js';
import { type Equipment, equipmentOf } from '../../document/sharing/own-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';

const [changed, noteChanged] = createSignal(0);

/** Whoever shows what the shop keeps looks again. */
export const ownChanged = (): void => void noteChanged((n) => n + 1);

/** Gauges, presses and metals that this browser keeps, as that changes; undefined until they are read. Call it inside a component. */
export const createOwnKept = (shop: Shop): (() => Equipment[] | undefined) => {
  const [kept] = createResource(changed, () => equipmentOf(shop));
  return () => kept.latest;
};
