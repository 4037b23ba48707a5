import { createReadStream } from 'node:fs';
import type { Io } from './io.ts';

/** A sheet has at most 20 million characters, of up to four bytes each. */
const MAX_BYTES = 80_000_000;

class FileError extends Error {
  override name = 'FileError';
}

/**
 * Signs that a terminal acts on, written out: a label must not move the cursor over its own verdict. What the program prints
 * itself has line ends and no others.
 */
const CONTROL = /[\p{Cc}\p{Cf}\u2028\u2029]/gu;

const harmless = (text: string): string =>
  text.replace(CONTROL, (sign) =>
    sign === '\n' ? sign : `⟨U+${sign.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')}⟩`,
  );

/** Reads no further than a sheet may go: a pipe or a device tells no size beforehand, and may never end. */
const read = async (path: string): Promise<string> => {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of path === '-' ? process.stdin : createReadStream(path)) {
    size += (part as Buffer).length;
    if (size > MAX_BYTES)
      throw new FileError(`it has more than ${MAX_BYTES / 1e6} MB; a sheet has at most 20 MB`);
    parts.push(part as Buffer);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts));
  } catch {
    throw new FileError('it is not UTF-8 text: export the sheet again');
  }
};

export const nodeIo: Io = {
  out: (text) => void process.stdout.write(harmless(text)),
  err: (text) => void process.stderr.write(harmless(text)),
  read,
};
