import type { IncomingMessage } from 'node:http';
import { isObject } from '../../../shared/sheet/schema.ts';
import { isKey, KEYS_PATH, type KeyRecord, type KeyWish, type Refusal } from '../../document/sharing/wire.ts';
import type { Keys } from '../store/keys.ts';
import { bodyOf, type Send } from './answer.ts';

const LONGEST_LABEL = 80;
/** Bytes of a wish for a key. */
const LONGEST_WISH = 4000;
/** Living keys: each request compares with all of them. */
const MOST_KEYS = 2000;

const REFUSED: { [why in Refusal]?: string } = {
  'key-unknown': 'The server does not know this key.',
  'key-ended': 'This key has been ended.',
};

/** The key behind `authorization: Bearer`, and what it may. */
const bearer = async (
  { headers }: IncomingMessage,
  keys: Keys,
): Promise<{ record: KeyRecord } | { status: 401 | 403; message: string }> => {
  const [, key] = /^Bearer +([\w-]+)$/i.exec(headers.authorization ?? '') ?? [];
  if (key === undefined || !isKey(key))
    return { status: 401, message: 'This is told to nobody without a key.' };
  const record = await keys.rightsOf(key);
  if (typeof record === 'string') return { status: 401, message: REFUSED[record] ?? 'The key is refused.' };
  if (record.sheet !== undefined || record.readOnly)
    return { status: 403, message: 'Only a key that opens and writes every sheet may do this.' };
  return { record };
};

/** Answers where the key of a request may not do everything. @returns the record of one that may. */
export const fullKey = async (
  request: IncomingMessage,
  keys: Keys,
  send: Send,
): Promise<KeyRecord | undefined> => {
  const who = await bearer(request, keys);
  if ('record' in who) return who.record;
  send(who.status, { message: who.message }, who.status === 401 ? { 'www-authenticate': 'Bearer' } : {});
  return undefined;
};

const wishIn = (text: string): KeyWish | string => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    value = undefined;
  }
  if (!isObject(value)) return 'What is wanted of a key is said as a JSON object.';
  const { label, sheet, readOnly } = value;
  if (typeof label !== 'string' || label.trim() === '') return 'Say whom the key is for.';
  if (label.length > LONGEST_LABEL) return `Say whom the key is for in ${LONGEST_LABEL} characters.`;
  if (typeof readOnly !== 'boolean') return 'Say whether the key only reads.';
  if (sheet !== undefined && (typeof sheet !== 'string' || !/^[\w-]{1,64}$/.test(sheet)))
    return 'That is no sheet.';
  return { label: label.trim(), readOnly, ...(sheet !== undefined && { sheet }) };
};

/** `/shop/keys` and what is below it: lists keys, makes one, ends one. */
export const answerKeys = async (
  request: IncomingMessage,
  path: string,
  keys: Keys,
  send: Send,
): Promise<void> => {
  const who = await fullKey(request, keys, send);
  if (!who) return;
  const id = path.slice(KEYS_PATH.length + 1);
  if (id !== '') {
    if (request.method !== 'DELETE') {
      send(405, { message: 'A key can be ended, and nothing else.' }, { allow: 'DELETE' });
      return;
    }
    // Who ends their own key is shut out at once, and nobody may be left to make another.
    if (id === who.id) send(409, { message: 'This is the key you came with: end it from another device.' });
    else if (await keys.end(id)) send(200, {});
    else send(404, { message: 'There is no such key.' });
    return;
  }
  if (request.method === 'GET' || request.method === 'HEAD') {
    send(200, await keys.list());
    return;
  }
  if (request.method !== 'POST') {
    send(405, { message: 'Keys are listed and made here.' }, { allow: 'GET, HEAD, POST' });
    return;
  }
  const text = await bodyOf(request, LONGEST_WISH);
  if (text === undefined) {
    send(413, { message: 'That is too much for one key.' }, { connection: 'close' });
    return;
  }
  const wish = wishIn(text);
  if (typeof wish === 'string') send(400, { message: wish });
  else if ((await keys.list()).filter(({ ended }) => ended === undefined).length >= MOST_KEYS)
    send(409, { message: `There are ${MOST_KEYS.toLocaleString('en')} keys: end some first.` });
  else send(201, await keys.make(wish));
};
