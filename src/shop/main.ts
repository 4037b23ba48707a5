import { readBackup } from './backup/read.ts';
import { writeBackup } from './backup/write.ts';
import { Failure } from './start/failure.ts';
import { hasStore, holdStore, openStore, storeWords } from './start/open-store.ts';
import { HELP, type Options, readOptions } from './start/options.ts';
import { serve } from './start/serve.ts';

/** Misuse, or a file that cannot be read. */
const MISUSE = 2;

const backUp = async (file: string, options: Options): Promise<void> => {
  if (!hasStore(options)) throw new Failure(`There is nothing to back up in ${options.data}.`);
  const { database } = await openStore(options);
  try {
    const trouble = await writeBackup(database, file);
    if (trouble !== undefined) throw new Failure(trouble);
  } finally {
    await database.close();
  }
  console.log(`${file} holds all sheets and keys of ${storeWords(options)}.`);
};

const restore = async (file: string, options: Options): Promise<void> => {
  const letGo = holdStore(options);
  const { database } = await openStore(options);
  try {
    const came = await readBackup(database, file);
    if (typeof came === 'string') throw new Failure(came);
    console.log(`${came} documents and their keys are in ${storeWords(options)}.`);
  } finally {
    await database.close();
    letGo();
  }
};

/** `npm run shop`. */
export const main = async (
  argv: readonly string[],
  environment: Readonly<Record<string, string | undefined>>,
): Promise<void> => {
  const asked = readOptions(argv, environment);
  try {
    if (asked.kind === 'help') console.log(HELP);
    else if (asked.kind === 'misuse') {
      console.error(`${asked.message}\nWhat can be asked for: npm run shop -- --help`);
      process.exitCode = MISUSE;
    } else if (asked.kind === 'backup') await backUp(asked.file, asked.options);
    else if (asked.kind === 'restore') await restore(asked.file, asked.options);
    else await serve(asked.options);
  } catch (error) {
    if (!(error instanceof Failure)) throw error;
    console.error(error.message);
    process.exit(1);
  }
};
