import { createResource, createSignal, onCleanup } from 'solid-js';
import type { ListState } from '../../document/joined/shared-list.ts';
import { toBase64url } from '../../document/sharing/base64url.ts';
import type { Equipment } from '../../document/sharing/own-equipment.ts';
import { listedOf, toBeShared } from '../../document/sharing/shared-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { deviceName, keyOfShop } from './keys.ts';
import { followList } from './list-over.ts';
import { putOnList } from './put-on-list.ts';
import { saidName } from './said-name.ts';
import { sharing } from './sharing.ts';

/** What of the shop's own is shared, and the way to share more of it. */
export interface OwnShared {
  /** Undefined where this device has not joined the shop's server. */
  state(): ListState | undefined;
  /** How the last press stands, in words. */
  told(): string;
  share(one: Equipment): void;
  end(one: Equipment): void;
}

const freshId = (): string => toBase64url(crypto.getRandomValues(new Uint8Array(12)));

/** Follows it as long as the component that calls this is shown. */
export const createOwnShared = (shop: Shop): OwnShared => {
  const [state, setState] = createSignal<ListState>();
  const [told, setTold] = createSignal('');
  let leave = (): void => undefined;
  let gone = false;
  let last = 0;
  const [key] = createResource(sharing, async () => {
    last += 1;
    const turn = last;
    leave();
    leave = () => undefined;
    setState(undefined);
    const key = await keyOfShop(shop);
    if (key === undefined) return undefined;
    const isPast = () => gone || turn !== last;
    const end = await followList(key, (now) => {
      if (!isPast()) setState(now);
    });
    if (isPast()) end();
    else leave = end;
    return key;
  });
  onCleanup(() => {
    gone = true;
    leave();
  });
  const put = async (one: Equipment, ended: boolean): Promise<void> => {
    const by = key.latest;
    if (by === undefined) return;
    const shared = toBeShared(one, deviceName(), Date.now());
    if (!shared) {
      setTold(
        'It is too long for the list of what is shared: shorten what it is called and what stands in it.',
      );
      return;
    }
    const name = saidName(one.label) || 'It';
    const isStored = await putOnList(
      by,
      (list) => {
        const listed = listedOf(list.state.get().equipment, one);
        if (!ended) return list.putEquipment([[listed[0]?.id ?? freshId(), shared]]);
        const living = listed.filter((other) => !other.ended);
        return list.putEquipment(
          living.map(({ id, kind, label, inputs, by, since }) => [
            id,
            { kind, label, inputs, by, since, ended: true },
          ]),
        );
      },
      setTold,
    );
    if (isStored)
      setTold(
        ended
          ? `${name} is shared no longer. Every device keeps what it has.`
          : `${name} is shared with the shop.`,
      );
  };
  const press = (one: Equipment, ended: boolean) =>
    void put(one, ended).catch((error: unknown) => setTold(`It was not done: ${String(error)}`));
  return { state, told, share: (one) => press(one, false), end: (one) => press(one, true) };
};
