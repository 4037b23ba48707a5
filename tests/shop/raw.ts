import * as encoding from 'lib0/encoding';

/** Messages as bytes, for what no provider sends. */
const frame = (document: string, write: (encoder: encoding.Encoder) => void): Uint8Array => {
  const encoder = encoding.createEncoder();
  encoding.writeVarString(encoder, document);
  write(encoder);
  return encoding.toUint8Array(encoder);
};

export const authFrame = (document: string, token: string): Uint8Array =>
  frame(document, (encoder) => {
    encoding.writeVarUint(encoder, 2);
    encoding.writeVarUint(encoder, 0);
    encoding.writeVarString(encoder, token);
  });

export const syncFrame = (document: string, step: number, bytes: Uint8Array): Uint8Array =>
  frame(document, (encoder) => {
    encoding.writeVarUint(encoder, 0);
    encoding.writeVarUint(encoder, step);
    encoding.writeVarUint8Array(encoder, bytes);
  });

/** A stateless message: 5 to the server, 6 to all others. */
export const sayFrame = (document: string, type: number, text: string): Uint8Array =>
  frame(document, (encoder) => {
    encoding.writeVarUint(encoder, type);
    encoding.writeVarString(encoder, text);
  });
