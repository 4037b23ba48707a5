import { createReadStream } from 'node:fs';
import type { Io } from './io.ts';

/** A sheet has at most 5 million characters, of up to four bytes each. */
const MAX_BYTES = 20_000_000;

class FileError extends Error {
  override name = 'FileError';
}

/** Reads no further than a sheet may go: a pipe or a device tells no size beforehand, and may never end. */
const read = async (path: string): Promise<string> => {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of createReadStream(path)) {
    size += (part as Buffer).length;
    if (size > MAX_BYTES)
      throw new FileError(`it has more than ${MAX_BYTES / 1e6} MB; a sheet has at most 5 MB`);
    parts.push(part as Buffer);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(parts));
  } catch {
    throw new FileError('it is not UTF-8 text: export the sheet again');
  }
};

export const nodeIo: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  read,
};
