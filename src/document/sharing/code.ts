import { type Problem, problem } from '../../../shared/problem.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { type ReadSheet, readSheet } from '../../../shared/sheet/read.ts';
import { fromBase64url, toBase64url } from './base64url.ts';
import { crc32 } from './crc32.ts';
import { deflate, inflate } from './deflate.ts';

/**
 * A whole sheet as a text to paste: base64url of one byte with the version, four with the length of what follows the
 * head, four with its CRC-32 (big end first), and the file as JSON packed by DEFLATE.
 */
const VERSION = 1;
const HEAD = 9;

/** Bytes a sheet may have once unpacked. What is bigger goes by file, as is said where the code would stand. */
export const MAX_UNPACKED = 5_000_000;
/** Characters. Nothing longer can be a sheet: DEFLATE grows by at most a few bytes what it cannot pack. */
const MAX_CODE = Math.ceil(((MAX_UNPACKED + 10_000) * 4) / 3);

const ADDRESS = '#/open/';

/** A problem where the sheet is too big to be read again. */
export async function codeOf(file: SheetFile): Promise<string | Problem> {
  const plain = new TextEncoder().encode(JSON.stringify(file));
  if (plain.length > MAX_UNPACKED) {
    return problem(
      'too-big',
      `The sheet has ${(plain.length / 1e6).toFixed(1)} MB; its text holds at most ${MAX_UNPACKED / 1e6} MB. Save it to a file and hand that on.`,
    );
  }
  const packed = await deflate(plain);
  const bytes = new Uint8Array(HEAD + packed.length);
  const head = new DataView(bytes.buffer);
  head.setUint8(0, VERSION);
  head.setUint32(1, packed.length);
  head.setUint32(5, crc32(packed));
  bytes.set(packed, HEAD);
  return toBase64url(bytes);
}

/** The address that opens a code on the page at `page`. All of the sheet is behind the `#`, which is never sent. */
export const linkOf = (code: string, page: string): string => `${page.replace(/#.*$/s, '')}${ADDRESS}${code}`;

/** The code in what was pasted: a code, a link, or either as a letter breaks and quotes it. */
export function codeIn(pasted: string): string {
  const at = pasted.lastIndexOf(ADDRESS);
  const rest = at < 0 ? pasted : pasted.slice(at + ADDRESS.length);
  return rest
    .replace(/[\s\u200b\u00ad\ufeff]+/g, '')
    .replace(/^[<("'`\u2018\u201c]+/, '')
    .slice(0, MAX_CODE * 2)
    .replace(/.*/s, withoutEnd);
}

const QUOTED_END = new Set('>)"\'`.,;\u2019\u201d');

/** Read from the end: an expression for it would look at each place from every place before. */
const withoutEnd = (text: string): string => {
  let end = text.length;
  while (end > 0 && QUOTED_END.has(text[end - 1]!)) end -= 1;
  return text.slice(0, end);
};

const damaged = (why: string): Problem =>
  problem('syntax', `The text of the sheet is damaged: ${why}. Copy it again from where it came, whole.`);

/** The sheet behind a pasted code or link. Nothing is taken over. */
export async function readCode(pasted: string): Promise<ReadSheet | Problem> {
  if (pasted.length > 2 * MAX_CODE) {
    return problem(
      'too-big',
      `The text has ${pasted.length} characters; that of a sheet has at most ${MAX_CODE}.`,
    );
  }
  const code = codeIn(pasted);
  if (code === '') return problem('syntax', 'There is no sheet here: paste the text or the link of one.');
  if (code.length > MAX_CODE) {
    return problem(
      'too-big',
      `The text has ${code.length} characters; the longest there can be has ${MAX_CODE}.`,
    );
  }
  const bytes = fromBase64url(code);
  if (typeof bytes === 'number') {
    const found = String.fromCodePoint(code.codePointAt(bytes)!);
    const sign = /[\p{L}\p{N}\p{P}\p{S}]/u.test(found) ? `"${found}"` : 'one that cannot be seen';
    return problem(
      'syntax',
      `This is not the text of a sheet: its character ${bytes + 1} is ${sign}, and that has only letters and digits without accents, - and _.`,
    );
  }
  return unpack(bytes);
}

async function unpack(bytes: Uint8Array<ArrayBuffer>): Promise<ReadSheet | Problem> {
  if (bytes.length < HEAD) return damaged('it is too short to hold a sheet');
  const head = new DataView(bytes.buffer);
  const version = head.getUint8(0);
  const length = head.getUint32(1);
  const packed = bytes.subarray(HEAD);
  if (version !== VERSION) {
    return problem(
      'syntax',
      `This is not a text that can be read here: it begins as version ${version}, and this edition reads version ${VERSION}. It is damaged, or it comes from a newer edition.`,
    );
  }
  const characters = (n: number) => Math.ceil((n * 4) / 3);
  if (packed.length < length) {
    const [came, sent] = [characters(bytes.length), characters(HEAD + length)];
    return damaged(
      sent <= MAX_CODE
        ? `it is cut short, with ${came} of ${sent} characters`
        : 'the length it gives is none a sheet can have',
    );
  }
  if (packed.length > length) return damaged('something stands behind its end');
  if (crc32(packed) !== head.getUint32(5)) return damaged('at least one character is not as it was sent');
  const plain = await inflate(packed, MAX_UNPACKED);
  if (plain === 'damaged') return damaged('it does not unpack');
  if (plain === 'too big') {
    return problem(
      'too-big',
      `The text unpacks to more than ${MAX_UNPACKED / 1e6} MB, more than any sheet; it was not unpacked further.`,
    );
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(plain);
  } catch {
    return damaged('what it holds is no text');
  }
  return readSheet(text);
}
