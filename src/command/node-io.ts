import { readFile, stat } from 'node:fs/promises';
import type { Io } from './io.ts';

/** A sheet has at most 5 million characters, of up to four bytes each. */
const MAX_BYTES = 20_000_000;

export class FileError extends Error {
  override name = 'FileError';
}

const read = async (path: string): Promise<string> => {
  const { size } = await stat(path);
  if (size > MAX_BYTES) throw new FileError(`it has ${(size / 1e6).toFixed(1)} MB; a sheet has at most 5 MB`);
  const bytes = await readFile(path);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new FileError('it is not UTF-8 text: export the sheet again');
  }
};

export const nodeIo: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  read,
};
