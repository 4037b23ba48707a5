import { createSignal } from 'solid-js';
import type { ReadSheet } from '../../../shared/sheet/read.ts';
import type { Partly } from './parts-kept.ts';

/** A sheet that was read and that nobody has taken over yet. */
export interface Arrival extends ReadSheet {
  /** Where it came from, for people: `the file countershaft.json`, `a code`. */
  source: string;
}

const [arrival, setArrival] = createSignal<Arrival>();

/** The sheet that waits to be looked at, and how to put another there or take it away. */
export { arrival, setArrival };

/** Reads a file; says what is wrong with it where it is no sheet. */
export const readFile = async (file: File): Promise<Arrival | string> => {
  const { importText } = await import('../../document/files.ts');
  // A gigabyte would be read into memory before anybody looks at its size.
  if (file.size > 20_000_000)
    return `${file.name}: the file has ${(file.size / 1e6).toFixed(0)} MB; a sheet has at most 5 MB.`;
  const read = importText(await file.text());
  return 'message' in read ? `${file.name}: ${read.message}` : { ...read, source: `the file ${file.name}` };
};

export const readPasted = async (text: string): Promise<Arrival | Partly | string> => {
  const trimmed = text.trim();
  if (trimmed.startsWith('{')) {
    const { importText } = await import('../../document/files.ts');
    const read = importText(trimmed);
    return 'message' in read ? read.message : { ...read, source: 'the text that was pasted' };
  }
  const { partsIn } = await import('../../document/sharing/parts.ts');
  const parts = partsIn(trimmed);
  if (parts.length > 0) {
    const { takeParts } = await import('./parts-kept.ts');
    const taken = takeParts(parts);
    return 'code' in taken ? readWhole(taken.code, `${taken.of} codes`) : taken;
  }
  return readWhole(trimmed, 'a text');
};

const readWhole = async (code: string, source: string): Promise<Arrival | string> => {
  const { readCode } = await import('../../document/sharing/code.ts');
  const read = await readCode(code);
  return 'message' in read ? read.message : { ...read, source };
};
