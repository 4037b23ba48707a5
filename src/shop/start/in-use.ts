import { join } from 'node:path';
import Libsql from 'libsql';

/**
 * Holds a data folder for this process: two servers over one file would not hear of each other's edits. The system lets
 * go of it however the process ends. @returns a function that lets go; undefined where another process holds it.
 */
export const holdFolder = (folder: string): (() => void) | undefined => {
  const held = new Libsql(join(folder, 'in-use'), { timeout: 0 });
  try {
    held.exec('BEGIN EXCLUSIVE');
    return () => held.close();
  } catch (error) {
    held.close();
    if (error instanceof Error && 'code' in error && error.code === 'SQLITE_BUSY') return undefined;
    throw error;
  }
};
