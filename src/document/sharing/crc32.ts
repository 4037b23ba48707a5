const table = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let bit = 0; bit < 8; bit += 1) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1;
  return c;
});

/** CRC-32 as of ISO/IEC/IEEE 8802-3 and RFC 1952: a slip of the pen or a lost character never passes it unseen. */
export function crc32(bytes: Uint8Array): number {
  let c = 0xffffffff;
  for (const byte of bytes) c = (c >>> 8) ^ table[(c ^ byte) & 0xff]!;
  return (c ^ 0xffffffff) >>> 0;
}
