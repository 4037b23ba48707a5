import { deflateRawSync, gzipSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { fromBase64url, toBase64url } from '../../../src/document/sharing/base64url.ts';
import { codeIn, codeOf, linkOf, MAX_UNPACKED, readCode } from '../../../src/document/sharing/code.ts';
import { crc32 } from '../../../src/document/sharing/crc32.ts';
import { inflate } from '../../../src/document/sharing/deflate.ts';
import { SheetDocument } from '../../../src/document/sheet-document.ts';
import { apply, edit, SEED } from '../edits.ts';
import { printOf as fingerprint } from '../prints.ts';
import { bushJob } from '../sample.ts';

const code = async (file: SheetFile = bushJob()): Promise<string> => {
  const made = await codeOf(file);
  if (typeof made !== 'string') throw new Error(made.message);
  return made;
};

const said = async (pasted: string): Promise<string> => {
  const read = await readCode(pasted);
  return 'message' in read ? read.message : 'read';
};

/** A code whose head is right, whatever it packs. */
const packing = (plain: Uint8Array): string => {
  const packed = deflateRawSync(plain);
  const bytes = new Uint8Array(9 + packed.length);
  const head = new DataView(bytes.buffer);
  head.setUint8(0, 1);
  head.setUint32(1, packed.length);
  head.setUint32(5, crc32(packed));
  bytes.set(packed, 9);
  return toBase64url(bytes);
};

describe('the parts of a code', () => {
  it('CRC-32 is that of RFC 1952, as the gzip of Node ends with', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
        expect(crc32(bytes)).toBe(gzipSync(bytes).readUInt32LE(gzipSync(bytes).length - 8));
      }),
      SEED,
    );
  });

  it('base64url is that of RFC 4648, as Node writes it', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        const text = toBase64url(bytes);
        expect(text).toBe(Buffer.from(bytes).toString('base64url'));
        expect(fromBase64url(text)).toEqual(Uint8Array.from(bytes));
      }),
      SEED,
    );
  });

  it('unpacks what another DEFLATE packed', async () => {
    const plain = new TextEncoder().encode('shingle mill '.repeat(500));
    expect(await inflate(new Uint8Array(deflateRawSync(plain)), 10_000)).toEqual(plain);
  });
});

describe('a code', () => {
  it('gives back the whole sheet, with the same fingerprint', async () => {
    const read = await readCode(await code());
    expect(read).toEqual({ file: bushJob(), warnings: [], unknown: [] });
  });

  it('gives back any sheet, edited in any way', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { maxLength: 30 }), async (edits) => {
        const sheet = SheetDocument.fromFile(bushJob());
        for (const one of edits) apply(sheet, one);
        const file = sheet.toFile();
        const read = await readCode(await code(file));
        expect('file' in read && fingerprint(read.file)).toBe(fingerprint(file));
      }),
      { seed: 7, numRuns: 60 },
    );
  });

  it('is read out of a link, a letter that broke the line, and quotes', async () => {
    const text = await code();
    const link = linkOf(text, 'http://127.0.0.1:5000/#/sheet/abc');
    expect(link).toBe(`http://127.0.0.1:5000/#/open/${text}`);
    const broken = text.replace(/(.{60})/g, '$1\r\n> '.replace('> ', '  '));
    for (const pasted of [link, ` ${text}\n`, `<${link}>.`, `“${text}”`, broken])
      expect(codeIn(pasted)).toBe(text);
  });

  it('says what is wrong with it, and how', async () => {
    const text = await code();
    const wrong = text[40] === 'A' ? 'B' : 'A';
    expect(await said(`${text.slice(0, 40)}${wrong}${text.slice(41)}`)).toMatch(
      /damaged: at least one character/,
    );
    expect(await said(text.slice(0, 100))).toBe(
      `The text of the sheet is damaged: it is cut short, with 100 of ${text.length} characters. Copy it again from where it came, whole.`,
    );
    expect(await said(`${text}AAAA`)).toMatch(/behind its end/);
    expect(await said('')).toMatch(/no sheet here/);
    expect(await said('AAAA')).toMatch(/too short/);
    expect(await said('2-1/4 in')).toMatch(/character 4 is "\/"/);
    expect(await said(`C${text.slice(1)}`)).toMatch(/begins as version 9/);
    expect(await said('A'.repeat(8_000_000))).toMatch(/longest there can be/);
    expect(await said('A'.repeat(20_000_000))).toMatch(/at most/);
    expect(await said(packing(new TextEncoder().encode('{"format":"another"}')))).toMatch(/not a job sheet/);
    expect(await said(packing(Uint8Array.of(0xff, 0xfe, 0xfd)))).toMatch(/no text/);
  });

  it('is read at once whatever stands many times over in what was pasted', async () => {
    // Counted, not timed: an expression that looks at each place from every place before takes minutes for this.
    for (const sign of [')', '.', ',', ';', '"', '<', ' ', '\u201d'])
      for (const end of ['', 'x']) expect(await said(`${sign.repeat(1_000_000)}${end}`)).not.toBe('read');
    expect(codeIn(`(see: <${'A'.repeat(20)}>).,;`)).not.toMatch(/[).,;>]$/);
  });

  it('lets no changed character pass', async () => {
    const text = await code();
    const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
    await fc.assert(
      fc.asyncProperty(fc.nat(text.length - 2), fc.nat(63), async (at, c) => {
        fc.pre(alphabet[c] !== text[at]);
        expect(await said(`${text.slice(0, at)}${alphabet[c]}${text.slice(at + 1)}`)).not.toBe('read');
      }),
      { seed: 3, numRuns: 300 },
    );
  });

  it('of a few bytes that would fill the memory is given up at the limit', async () => {
    const bomb = packing(new Uint8Array(200_000_000));
    expect(bomb.length).toBeLessThan(300_000);
    expect(await said(bomb)).toMatch(/more than 5 MB/);
  });

  it('of too many cells, or nested too deep, is refused as a file is', async () => {
    const cells = Array.from({ length: 10_001 }, (_, k) => ({ id: `c${k}`, role: 'given' as const }));
    expect(await said(await code({ ...bushJob(), cells }))).toMatch(/10001 items; at most 10000/);
    const deep = `${'['.repeat(100)}${']'.repeat(100)}`;
    expect(await said(packing(new TextEncoder().encode(deep)))).toMatch(/100 levels deep/);
  });

  it('is not made of a sheet that nobody could read', async () => {
    const file = {
      ...bushJob(),
      cells: [{ id: 'c1', role: 'remark' as const, note: 'x'.repeat(MAX_UNPACKED) }],
    };
    const made = await codeOf(file);
    expect(typeof made === 'object' && made.message).toMatch(/5\.0 MB; its text holds at most 5 MB/);
  });
});
