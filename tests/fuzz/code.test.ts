import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { toBase64url } from '../../src/document/sharing/base64url.ts';
import { codeOf, linkOf, readCode } from '../../src/document/sharing/code.ts';
import { crc32 } from '../../src/document/sharing/crc32.ts';
import { bushJob } from '../document/sample.ts';
import { feed, mutated, nasty, nothingPolluted, READING } from './inputs.ts';
import { sheetTexts } from './sheets.ts';

const headed = (packed: Uint8Array, version = 1, length = packed.length, sum = crc32(packed)): string => {
  const bytes = new Uint8Array(9 + packed.length);
  const head = new DataView(bytes.buffer);
  head.setUint8(0, version);
  head.setUint32(1, length);
  head.setUint32(5, sum);
  bytes.set(packed, 9);
  return toBase64url(bytes);
};

it('whatever is pasted as a code is read or refused in words', async () => {
  const made = await codeOf(bushJob());
  if (typeof made !== 'string') throw new Error(made.message);
  const digits = fc.constantFrom(...'ABCabc019-_');
  const good = fc.constantFrom(made, linkOf(made, 'http://127.0.0.1:5000/'));
  const packed = sheetTexts.map((text) => new Uint8Array(deflateRawSync(Buffer.from(text))));
  const inputs = fc.oneof(
    { weight: 3, arbitrary: mutated(good, fc.oneof(digits, nasty)) },
    { weight: 3, arbitrary: packed.map((bytes) => headed(bytes)) },
    // The head is right and what it packs is not: the checksum does not save the unpacking.
    { weight: 2, arbitrary: fc.uint8Array({ maxLength: 200 }).map((bytes) => headed(bytes)) },
    {
      weight: 1,
      arbitrary: fc
        .tuple(packed, fc.nat(255), fc.nat(0xffffffff), fc.nat(0xffffffff))
        .map(([bytes, version, length, sum]) => headed(bytes, version, length, sum)),
    },
    {
      weight: 1,
      arbitrary: fc
        .tuple(packed, fc.nat(), fc.nat(255))
        .map(([bytes, at, byte]) => headed(bytes.with(at % bytes.length, byte))),
    },
    { weight: 1, arbitrary: fc.string({ unit: digits, maxLength: 60 }) },
    // One sign many times over, up to 100 kB: what makes a reader slow.
    {
      weight: 1,
      arbitrary: fc
        .tuple(
          fc.constantFrom(...').,; (<&%A-_\n', '#/', 'A.', '),', '%2'),
          fc.nat(100_000),
          good,
          fc.boolean(),
        )
        .map(([bit, n, code, before]) => {
          const many = bit.repeat(n / bit.length);
          return before ? many + code : code + many;
        }),
    },
    { weight: 1, arbitrary: fc.string({ unit: 'binary' }) },
  );
  await feed(
    'decoder of codes',
    12,
    inputs,
    async (text) => {
      const result = await readCode(text);
      if ('message' in result) expect(result.message).toMatch(/\S+ \S+/);
      nothingPolluted();
    },
    READING,
  );
});
