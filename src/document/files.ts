import type { Problem } from '../../shared/problem.ts';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { type ReadSheet, readSheet } from '../../shared/sheet/read.ts';
import { writeSheet } from '../../shared/sheet/write.ts';

/** A sheet from the text of a file, with warnings to show; or what is wrong with the file. Nothing is taken over yet. */
export const importText = (text: string): ReadSheet | Problem => readSheet(text);

export const exportText = (file: SheetFile): string => writeSheet(file);

/**
 * Name for a sheet's file that every file system takes: `countershaft-bush.fitwright.json`. Letters and digits of any
 * script stay; `kind` tells a revision or a template apart.
 */
export function fileName(title: string, kind = ''): string {
  const stem = [title, kind]
    .join(' ')
    .normalize('NFC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  // 60 characters are at most 240 bytes; most file systems take 255.
  const short = [...stem].slice(0, 50).join('').replace(/-+$/, '');
  return `${short || 'sheet'}.fitwright.json`;
}
