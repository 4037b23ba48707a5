/** Bytes as text for an address: base64url without padding (RFC 4648, section 5). */

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const sixBits = new Uint8Array(128).fill(255);
for (const [value, c] of [...DIGITS].entries()) sixBits[c.charCodeAt(0)] = value;

export function toBase64url(bytes: Uint8Array): string {
  const pieces: string[] = [];
  // In pieces, since a call takes only so many arguments.
  for (let i = 0; i < bytes.length; i += 0x6000)
    pieces.push(btoa(String.fromCharCode(...bytes.subarray(i, i + 0x6000))));
  return pieces.join('').replace(/=+$/, '').replaceAll('+', '-').replaceAll('/', '_');
}

/** The bytes, or the place of the first character that cannot be one of a code. */
export function fromBase64url(text: string): Uint8Array<ArrayBuffer> | number {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let n = 0;
  for (let i = 0; i < text.length; i += 1) {
    const value = sixBits[text.charCodeAt(i)] ?? 255;
    if (value === 255) return i;
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[n++] = held >> bits;
    }
  }
  return bytes;
}
