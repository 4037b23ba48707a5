import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import * as Y from 'yjs';

/**
 * The messages of `HocuspocusProvider` 3.4.4, read strictly: what it does not send to a server is none. A message begins with
 * the name of its document.
 */

const SYNC = 0;
const PRESENCE = 1;
const AUTH = 2;
const QUERY_PRESENCE = 3;
const STATELESS = 5;
const CLOSE = 7;
const SYNC_STATUS = 8;

const STEP_1 = 0;
const STEP_2 = 1;
const UPDATE = 2;

const TOKEN = 0;
const DENIED = 1;
const AUTHENTICATED = 2;

export type Frame =
  | { is: 'token'; token: string }
  | { is: 'ask'; vector: Uint8Array }
  | { is: 'update'; update: Uint8Array; answer: boolean }
  | { is: 'presence'; entries: Uint8Array }
  | { is: 'query-presence' }
  | { is: 'said'; payload: string }
  | { is: 'close' };

const contentOf = (decoder: decoding.Decoder): Frame | undefined => {
  switch (decoding.readVarUint(decoder)) {
    case SYNC: {
      const step = decoding.readVarUint(decoder);
      const bytes = decoding.readVarUint8Array(decoder);
      if (step === STEP_1) return { is: 'ask', vector: bytes };
      return step === STEP_2 || step === UPDATE
        ? { is: 'update', update: bytes, answer: step === STEP_2 }
        : undefined;
    }
    case PRESENCE:
      return { is: 'presence', entries: decoding.readVarUint8Array(decoder) };
    case AUTH:
      return decoding.readVarUint(decoder) === TOKEN
        ? { is: 'token', token: decoding.readVarString(decoder) }
        : undefined;
    case QUERY_PRESENCE:
      return { is: 'query-presence' };
    case STATELESS:
      return { is: 'said', payload: decoding.readVarString(decoder) };
    case CLOSE:
      return { is: 'close' };
    default:
      return undefined;
  }
};

/**
 * @param data must own its buffer whole: a length that lies reads up to its end, and no further.
 * @returns undefined for what is no message of this protocol.
 */
export const readFrame = (data: Uint8Array): { document: string; frame: Frame } | undefined => {
  try {
    const decoder = decoding.createDecoder(data);
    const document = decoding.readVarString(decoder);
    const frame = contentOf(decoder);
    return frame && !decoding.hasContent(decoder) ? { document, frame } : undefined;
  } catch {
    return undefined;
  }
};

const framed = (document: string, type: number, write: (encoder: encoding.Encoder) => void): Uint8Array => {
  const encoder = encoding.createEncoder();
  encoding.writeVarString(encoder, document);
  encoding.writeVarUint(encoder, type);
  write(encoder);
  return encoding.toUint8Array(encoder);
};

const synced = (document: string, step: number, bytes: Uint8Array): Uint8Array =>
  framed(document, SYNC, (encoder) => {
    encoding.writeVarUint(encoder, step);
    encoding.writeVarUint8Array(encoder, bytes);
  });

const auth = (document: string, kind: number, text: string): Uint8Array =>
  framed(document, AUTH, (encoder) => {
    encoding.writeVarUint(encoder, kind);
    encoding.writeVarString(encoder, text);
  });

export const frames = {
  /** Asks for what the other side has and this one has not. */
  ask: (document: string, doc: Y.Doc) => synced(document, STEP_1, Y.encodeStateVector(doc)),
  answer: (document: string, update: Uint8Array) => synced(document, STEP_2, update),
  update: (document: string, update: Uint8Array) => synced(document, UPDATE, update),
  presence: (document: string, entries: Uint8Array) =>
    framed(document, PRESENCE, (encoder) => encoding.writeVarUint8Array(encoder, entries)),
  denied: (document: string, reason: string) => auth(document, DENIED, reason),
  authenticated: (document: string, readOnly: boolean) =>
    auth(document, AUTHENTICATED, readOnly ? 'readonly' : 'read-write'),
  said: (document: string, what: object) =>
    framed(document, STATELESS, (encoder) => encoding.writeVarString(encoder, JSON.stringify(what))),
  close: (document: string, reason: string) =>
    framed(document, CLOSE, (encoder) => encoding.writeVarString(encoder, reason)),
  taken: (document: string) => framed(document, SYNC_STATUS, (encoder) => encoding.writeVarUint(encoder, 1)),
};
