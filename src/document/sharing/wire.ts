import * as Y from 'yjs';
import { isObject } from '../../../shared/sheet/schema.ts';
import { fromBase64url, toBase64url } from './base64url.ts';

/**
 * What a page and the shop's server say to each other. Both sides import this file; the server trusts nothing of it.
 *
 * 1. `GET /shop/about` tells a page whether it came from a shop's server ({@link About}); elsewhere it is not found.
 * 2. One WebSocket at `/shop/sync` (`HocuspocusProviderWebsocket`) serves many documents, each a `HocuspocusProvider`:
 *    `sheet.<id>` ({@link sheetDocument}) holds the top-level types of a {@link SheetDocument}, `list` what is shared:
 *    sheets ({@link Shared}), and gauges, presses and metals (`shared-equipment.ts`). Fields are plain values: no shared type is nested deeper than the map of a cell.
 * 3. The provider's token is {@link tokenOf}. Before it the server takes nothing, and it waits 5 seconds; a line on which
 *    nothing has come by then is a lost one, for the network may be slow. Once the key is taken the server asks for what the
 *    page has before it tells anything: a page forgets a value of its own once another has overwritten it.
 * 4. A refusal names a {@link Refusal}: before the document is open as the reason of `onAuthenticationFailed`, after that as
 *    the reason of the provider's `onClose` (event code 1000). Either is final: the page detaches that provider, says why and
 *    sends nothing of that sheet again until somebody asks for it. What was refused is neither stored nor passed on; the
 *    page still holds it. Where it is known which field was refused, {@link RefusedField} comes just before.
 * 5. A WebSocket closed with a code of {@link CLOSED} is final for all sheets (`websocketProvider.disconnect()`); any other
 *    code is a lost line, and the provider comes back by itself. Where a key has ended its documents are refused.
 * 6. *At the shop's server* is known only thus. The page counts its marks, and sends `{"mark": n}` as a stateless message
 *    after `synced` and after each update it made (several may share one). Once everything that came before the mark is
 *    committed to the store the server answers {@link Stored} with that mark and the state vector of what is stored.
 *    A sheet is at the server when the last mark sent has come back on this connection and {@link covers} holds. The mark is
 *    needed because taking a field away moves no state vector. `unsyncedChanges` says nothing about the disk.
 * 7. {@link Storing} tells when the server cannot store (its disk is full), and when it can again.
 * 8. {@link Lost} tells every device of a value that was written at the same moment as another and did not remain. The last
 *    {@link LOST_KEPT} of a sheet come again at every connection: `n` grows, and a page passes over those it has shown.
 *    A client of Yjs is of the key that first writes as it, live or by telling its presence. What is new of it from another
 *    key is left out, and asked for again when more has come: {@link tokenOf} shows the keys a device had before.
 * 9. Presence (awareness) is a {@link Presence}; the server passes on these fields alone, of a device's own client alone.
 * 10. A key's rights are changed over HTTP: `POST /shop/keys` with a {@link KeyWish} makes one (answer {@link NewKey}),
 *    `GET /shop/keys` lists them ({@link KeyRecord}), `DELETE /shop/keys/<id>` ends one; header `authorization: Bearer <key>`.
 *    Only a key that writes every sheet may. Errors are `{"message": "..."}` for people.
 */
export const WIRE_EDITION = 2;

export const SYNC_PATH = '/shop/sync';
export const ABOUT_PATH = '/shop/about';
export const KEYS_PATH = '/shop/keys';

/** The document with what is shared. */
export const LIST_DOCUMENT = 'list';
/** A top-level map of it: id of a sheet -> {@link Shared}. */
export const LIST_MAP = 'shared';
/** The other: random id -> `SharedEquipment`. */
export const EQUIPMENT_MAP = 'equipment';

export const sheetDocument = (id: string): string => `sheet.${id}`;

/** Id of the sheet that a document holds; undefined for the list, and for what is no name of a document. */
export const sheetOfDocument = (name: string): string | undefined => /^sheet\.([\w-]{1,64})$/.exec(name)?.[1];

/** `GET /shop/about`. */
export interface About {
  shop: true;
  /** {@link WIRE_EDITION} of the server. */
  wire: number;
  /** Where the network finds the server, the likeliest first: a page of the server's own machine cannot know. */
  addresses?: string[];
}

/** What the list says of a shared sheet. */
export interface Shared {
  title: string;
  template: boolean;
  /** Name of the device that shared it. */
  by: string;
  /** When, milliseconds since 1970 by that device's clock. */
  since: number;
  /** Shared no longer: nothing of the sheet is deleted, and nobody is let in to it until it is shared again. */
  ended?: boolean;
}

/** Longest title on the list, characters: a longer one is cut there. */
export const MAX_TITLE = 500;
/** Longest name of a device, characters. */
export const MAX_DEVICE_NAME = 40;

export interface Presence {
  /** The name the device gave itself. */
  device: string;
  /** Id of the line it is on. */
  line?: string;
  /** Path of the field being typed in, in the file form (`entry`, `limits.lower`). */
  typing?: string;
  /** The number under which it edits this sheet (a client of Yjs), so that others can tell from which device an entry came. */
  edits?: number;
  /** Those under which it edited the sheet before, the last first: what it wrote where there was no network comes as of these. */
  edited?: readonly number[];
}

/** As many of them are told. */
export const MOST_EDITED = 12;

const isText = (value: unknown, longest: number): value is string =>
  typeof value === 'string' && value.length <= longest;

/** The presence that a state from the wire says, and nothing else of it. */
export const presenceIn = (state: unknown): Presence | undefined => {
  if (!isObject(state) || !isText(state.device, MAX_DEVICE_NAME)) return undefined;
  return {
    device: state.device,
    ...(isText(state.line, 64) && { line: state.line }),
    ...(isText(state.typing, 200) && { typing: state.typing }),
    ...(Number.isSafeInteger(state.edits) && { edits: state.edits as number }),
    ...(Array.isArray(state.edited) && {
      edited: state.edited.filter((one) => Number.isSafeInteger(one)).slice(0, MOST_EDITED),
    }),
  };
};

/** Sent by a page, as a stateless message. */
export interface Mark {
  mark: number;
}

export interface Stored {
  type: 'stored';
  /** The last mark of this connection before which everything is stored; absent before the first. */
  mark?: number;
  /** State vector of what is stored, as {@link Y.encodeStateVector} writes it, in base64url. */
  vector: string;
}

export interface Storing {
  type: 'storing';
  /** `full`: its disk is full. `failing`: anything else; it is tried again. */
  state: 'well' | 'full' | 'failing';
}

/** How many lost values of a sheet the server keeps. */
export const LOST_KEPT = 50;

export interface Lost {
  type: 'lost';
  /** Grows with each of a sheet. */
  n: number;
  /** Id of the cell; absent for a field of the sheet itself. */
  cell?: string;
  /** Key the field is stored under. */
  key: string;
  /** As stored, with ids in place of names; absent where a field was taken away. */
  lost?: unknown;
  kept?: unknown;
}

/** What an update was refused for. */
export interface RefusedField {
  type: 'refused';
  /** Id of the cell; absent for a field of the sheet itself. */
  cell?: string;
  /** Key the field is stored under; absent where the line itself is none. */
  key?: string;
}

export type ServerSays = Stored | Storing | Lost | RefusedField;

const parsed = (payload: string): Record<string, unknown> | undefined => {
  try {
    const value: unknown = JSON.parse(payload);
    return isObject(value) ? value : undefined;
  } catch {
    return undefined;
  }
};

/** The mark in a stateless message of a page. */
export const markIn = (payload: string): number | undefined => {
  const mark = parsed(payload)?.mark;
  return Number.isSafeInteger(mark) && (mark as number) >= 0 ? (mark as number) : undefined;
};

/** What a stateless message of a server says; undefined for what this edition does not know. */
export const serverSays = (payload: string): ServerSays | undefined => {
  const said = parsed(payload);
  if (!said) return undefined;
  const { type, vector, mark, state, n, cell, key } = said;
  if (type === 'stored' && typeof vector === 'string' && (mark === undefined || Number.isSafeInteger(mark)))
    return said as unknown as Stored;
  if (type === 'storing' && (state === 'well' || state === 'full' || state === 'failing'))
    return { type, state };
  if (
    type === 'lost' &&
    Number.isSafeInteger(n) &&
    typeof key === 'string' &&
    (cell === undefined || typeof cell === 'string')
  )
    return said as unknown as Lost;
  if (
    type === 'refused' &&
    (cell === undefined || isText(cell, 64)) &&
    (key === undefined || isText(key, 300))
  )
    return { type, ...(cell !== undefined && { cell }), ...(key !== undefined && { key }) };
  return undefined;
};

export const vectorText = (vector: Uint8Array): string => toBase64url(vector);

/** Whether what is stored has all that a document of this state vector was given. */
export const covers = ({ vector }: Stored, mine: Uint8Array): boolean => {
  const bytes = fromBase64url(vector);
  if (typeof bytes === 'number') return false;
  try {
    const stored = Y.decodeStateVector(bytes);
    return [...Y.decodeStateVector(mine)].every(([client, clock]) => (stored.get(client) ?? 0) >= clock);
  } catch {
    return false;
  }
};

/** Why a document is not open to a page, or no longer. */
export const REFUSALS = [
  /** The key is not one of this server's. */
  'key-unknown',
  'key-ended',
  /** The key opens another sheet, not this one. */
  'key-other-sheet',
  /** A device of the shop has ended the sharing of this sheet, for all of them. */
  'sharing-ended',
  /** An update came with a key that only reads. */
  'key-reads-only',
  /** An update was none, or wrote what a sheet does not hold. */
  'update-refused',
  /** The sheet has reached the size the server takes. */
  'sheet-full',
  /** What the server has stored of the sheet cannot be read. It changes nothing of it; what a page holds stays there. */
  'sheet-unreadable',
  /** As many connections as the server allows to a key or a sheet. */
  'too-many',
  /** The page is older than the server understands: load it again. What it holds is in its own database. */
  'page-old',
  /** The page is newer than the server. */
  'server-old',
] as const;

export type Refusal = (typeof REFUSALS)[number];

/** The refusal that a reason names; undefined for any other reason. */
export const refusalIn = (reason: string | undefined): Refusal | undefined =>
  REFUSALS.find((refusal) => refusal === reason);

/** Codes of a closed WebSocket after which nothing is sent again until somebody asks for it. */
export const CLOSED = {
  /** A message was none of this protocol. */
  malformed: 4400,
  /** Something else came before the key, too much, or a key that was refused and no other in time. */
  unauthenticated: 4401,
  /** More sockets than the server allows to one address. */
  crowded: 4429,
} as const;

export const isFinal = (code: number): boolean => Object.values(CLOSED).some((final) => final === code);

/** 128 random bits in base64url. */
const KEY = /^[\w-]{22}$/;

export const isKey = (text: string): boolean => KEY.test(text);

/** As many keys that a device had before are shown. */
const MOST_FORMER = 8;

/** What a provider gives as its token: the key, and those the device had before, by which it goes on as who it was. */
export const tokenOf = (key: string, former: readonly string[] = []): string =>
  [WIRE_EDITION, key, ...former.slice(0, MOST_FORMER)].join(' ');

export const tokenIn = (token: string): { edition: number; key: string; former: string[] } | undefined => {
  const [, edition, key, former = ''] = /^(\d{1,6}) ([\w-]{22})((?: [\w-]{22}){0,8})$/.exec(token) ?? [];
  return edition === undefined || key === undefined
    ? undefined
    : { edition: Number(edition), key, former: former.split(' ').filter((one) => one !== '') };
};

/** A link that joins: the key is behind `#`, which no browser sends. `sheet` is opened at once, as for a guest of one sheet. */
export const joinLink = (address: string, key: string, sheet?: string): string =>
  `${address.replace(/[/#]*$/, '')}/#/join/${key}${sheet === undefined ? '' : `/${sheet}`}`;

/** The key, and the sheet, in the part of an address behind `#`. */
export const joinIn = (hash: string): { key: string; sheet?: string } | undefined => {
  const [, key, sheet] = /^#?\/join\/([\w-]{22})(?:\/([\w-]{1,64}))?$/.exec(hash) ?? [];
  return key === undefined ? undefined : { key, ...(sheet !== undefined && { sheet }) };
};

/** What a key may. */
export interface KeyRights {
  /** Opens this sheet alone, and not the list. */
  sheet?: string;
  readOnly: boolean;
}

export interface KeyWish extends KeyRights {
  /** For people: who was given it. */
  label: string;
}

export interface KeyRecord extends KeyWish {
  /** Tells keys apart, and opens nothing. */
  id: string;
  /** Milliseconds since 1970, by the server's clock. */
  made: number;
  ended?: number;
  lastUsed?: number;
}

export interface NewKey extends KeyRecord {
  /** The key itself: told this once. */
  key: string;
}
