import { isReserved } from '../../../shared/sheet/field.ts';
import { isObject } from '../../../shared/sheet/schema.ts';
import { type Equipment, isSame } from './own-equipment.ts';
import { MAX_DEVICE_NAME } from './wire.ts';

/** A gauge, a press or a metal that a device of the shop shares: what another keeps of it is a copy, which nothing changes. */
export interface SharedEquipment {
  kind: string;
  label: string;
  inputs: Readonly<Record<string, string>>;
  /** Name of the device that shared it. */
  by: string;
  /** When, milliseconds since 1970 by that device's clock. */
  since: number;
  /** Shared no longer; who keeps it keeps it. */
  ended?: boolean;
}

/** As it stands on the list, under its id. */
export type ListedEquipment = SharedEquipment & { id: string };

/** A page shares no more than so many. */
export const MOST_EQUIPMENT = 400;
/** The server takes so many: two devices that share at once do not shut each other out. */
export const MAX_EQUIPMENT = 500;
const LONGEST_LABEL = 200;
const LONGEST_TEXT = 500;
const MOST_INPUTS = 40;

const NAME = /^[a-z][\w-]{0,63}$/i;

const isText = (value: unknown, longest: number): value is string =>
  typeof value === 'string' && value.length <= longest;

/** What stands in a line as an entry, and no formula: that would be worked out on another's sheet. */
const isInput = ([name, text]: [string, unknown]): boolean =>
  NAME.test(name) &&
  !isReserved(name) &&
  isText(text, LONGEST_TEXT) &&
  text !== '' &&
  !/^\s|\s$|^=/.test(text);

/** What the list says of one of a shop's own; undefined for what says anything else, or more. Read so by server and page. */
export const sharedEquipmentIn = (value: unknown): SharedEquipment | undefined => {
  if (!isObject(value)) return undefined;
  const { kind, label, inputs, by, since, ended, ...more } = value;
  if (Object.keys(more).length > 0 || !isText(kind, 64) || !NAME.test(kind) || isReserved(kind))
    return undefined;
  if (!isText(label, LONGEST_LABEL) || !isText(by, MAX_DEVICE_NAME) || !isObject(inputs)) return undefined;
  if (typeof since !== 'number' || !Number.isFinite(since)) return undefined;
  if (ended !== undefined && typeof ended !== 'boolean') return undefined;
  const entries = Object.entries(inputs);
  if (entries.length === 0 || entries.length > MOST_INPUTS || !entries.every(isInput)) return undefined;
  return {
    kind,
    label,
    inputs: Object.fromEntries(entries) as Record<string, string>,
    by,
    since,
    ...(ended && { ended }),
  };
};

/** One of a device's own as the list takes it; undefined where it is too long for that. */
export const toBeShared = (
  { kind, label, inputs }: Equipment,
  by: string,
  since: number,
): SharedEquipment | undefined =>
  sharedEquipmentIn({ kind, label, inputs: { ...inputs }, by: by.slice(0, MAX_DEVICE_NAME), since });

/** What the list has of one of a device's own: the same figures, whatever each calls it; that which is shared still first. */
export const listedOf = (list: readonly ListedEquipment[], one: Equipment): readonly ListedEquipment[] =>
  list
    .filter((other) => isSame(one, other))
    .sort((a, b) => Number(a.ended ?? false) - Number(b.ended ?? false) || a.since - b.since);

/** What others share and is not kept here, each once though two devices share it. */
export const offeredBy = (
  list: readonly ListedEquipment[],
  kept: readonly Equipment[],
): readonly ListedEquipment[] => {
  const found: ListedEquipment[] = [];
  for (const one of [...list].sort((a, b) => a.since - b.since))
    if (!one.ended && ![...kept, ...found].some((other) => isSame(one, other))) found.push(one);
  return found;
};

/** Of what is kept, that which has the name of one from elsewhere and other figures: which of the two is right, people say. */
export const namesake = (kept: readonly Equipment[], one: Equipment): Equipment | undefined =>
  one.label === ''
    ? undefined
    : kept.find((other) => other.kind === one.kind && other.label === one.label && !isSame(one, other));

/** Ids that make room on a full list: of what is shared no longer, the oldest first; undefined where all of it is shared. */
export const roomOn = (list: readonly ListedEquipment[], most = MOST_EQUIPMENT): string[] | undefined => {
  const over = list.length + 1 - most;
  if (over <= 0) return [];
  const ended = list.filter((one) => one.ended).sort((a, b) => a.since - b.since);
  return ended.length < over ? undefined : ended.slice(0, over).map(({ id }) => id);
};
