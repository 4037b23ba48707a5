import { type Problem, problem } from '../../../shared/problem.ts';
import { canonical } from '../../../shared/sheet/canonical.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { exportText, importText } from '../files.ts';
import { isPlain, storable } from '../model/fields.ts';
import type { Printer } from './printer.ts';
import type { ListRow } from './row.ts';
import type { StorageState } from './state.ts';
import type { Vault } from './vault.ts';

const BACKUP_FORMAT = 'fitwright-shop';

/** @param done sheets so far @param total sheets in all. */
export type Progress = (done: number, total: number) => void;

/** What of a shop a backup needs. */
export interface Stock {
  readonly printer: Printer;
  readonly vault: Pick<Vault, 'settings' | 'addRevision' | 'revisions'>;
  list(): ListRow[];
  row(id: string): ListRow | undefined;
  file(id: string): Promise<SheetFile | Problem>;
  create(file: SheetFile, options?: { id?: string }): Promise<string>;
  dateRow(id: string, was: Partial<Kept>): Promise<StorageState>;
  setting(key: string): Promise<unknown>;
  setSetting(key: string, value: unknown): Promise<StorageState>;
}

type Kept = Pick<ListRow, 'id' | 'archived' | 'removed' | 'created' | 'changed'>;

/** Keys of a shop's server stay in the browser that was given them. */
const isSecret = (setting: string): boolean => /^joined(?:\.|$)/.test(setting);

/**
 * The whole shop as one JSON file: settings, and for every sheet its file as of now and its revisions. A sheet that
 * cannot be read is left out and named in `problems`.
 */
export async function backup(
  shop: Stock,
  progress: Progress = () => {},
): Promise<{ file: Blob; problems: Problem[] }> {
  const rows = shop.list();
  const settings = Object.fromEntries((await shop.vault.settings()).filter(([key]) => !isSecret(key)));
  const head = { format: BACKUP_FORMAT, version: 1, made: new Date().toISOString(), settings };
  // Put together from pieces, so that a big shop is never one string in memory.
  const pieces: BlobPart[] = [`${JSON.stringify(head).slice(0, -1)},"sheets":[`];
  const problems: Problem[] = [];
  let first = true;
  for (const [k, row] of rows.entries()) {
    const file = await shop.file(row.id);
    if ('cells' in file) {
      const { id, archived, removed, created, changed } = row;
      const revisions = (await shop.vault.revisions(id)).map(
        ({ sheet: _sheet, n: _n, ...revision }) => revision,
      );
      const piece = JSON.stringify({ id, archived, removed, created, changed, revisions });
      pieces.push(new Blob([first ? '\n' : ',\n', piece.slice(0, -1), ',"file":', exportText(file), '}']));
      first = false;
    } else {
      problems.push({ ...file, origin: row.title.title });
    }
    progress(k + 1, rows.length);
  }
  pieces.push('\n]}\n');
  return { file: new Blob(pieces, { type: 'application/json' }), problems };
}

export interface Restored {
  /** Sheets that were not here. */
  added: string[];
  /** Sheets that are here with the same content; nothing was done. */
  same: string[];
  /** Sheets that are here with other content: the backup's stand beside them as copies. */
  copies: string[];
  problems: Problem[];
}

/** What a file from elsewhere has for a text, or a time that is one: a date beyond these stops whoever writes it down. */
const textIn = (value: unknown): string => (typeof value === 'string' ? value : '');
const timeIn = (value: unknown): number | undefined =>
  typeof value === 'number' && Math.abs(value) <= 8.64e15 ? value : undefined;

/** Ids as this program makes them. A sheet under any other gets one of its own. */
const ID = /^[\w-]{1,64}$/;

/** Takes in a backup. Nothing that is in the shop is changed or overwritten. */
export async function restore(
  shop: Stock,
  file: Blob | string,
  progress: Progress = () => {},
): Promise<Restored | Problem> {
  const saved = readBackup(typeof file === 'string' ? file : await file.text());
  if (!('sheets' in saved)) return saved;
  const result: Restored = { added: [], same: [], copies: [], problems: [] };
  for (const [k, sheet] of saved.sheets.entries()) {
    try {
      await restoreSheet(shop, sheet, saved.made, result);
    } catch (error) {
      // One sheet that cannot be taken in keeps none of the others out.
      result.problems.push(
        problem(
          'syntax',
          `Sheet ${k + 1} of the backup could not be taken in: ${String(error).slice(0, 120)}`,
          {
            origin: titleIn(sheet),
          },
        ),
      );
    }
    progress(k + 1, saved.sheets.length);
  }
  for (const [key, value] of Object.entries(saved.settings)) {
    if (isSecret(key)) continue;
    if ((await shop.setting(key)) === undefined) await shop.setSetting(key, value);
  }
  return result;
}

async function restoreSheet(shop: Stock, saved: unknown, made: string, result: Restored): Promise<void> {
  if (!isPlain(saved) || typeof saved.id !== 'string' || !isPlain(saved.file)) {
    result.problems.push(
      problem('syntax', 'The backup holds a sheet that cannot be read; the others are restored.', {
        origin: titleIn(saved),
      }),
    );
    return;
  }
  const read = importText(JSON.stringify(saved.file));
  if (!('file' in read)) {
    result.problems.push({ ...read, origin: titleIn(saved) });
    return;
  }
  const { file } = read;
  const id = ID.test(saved.id) ? saved.id : undefined;
  const here = id !== undefined && shop.row(id) ? await shop.file(id) : undefined;
  if (id !== undefined && here && 'cells' in here && alike(here, storable(file) as SheetFile)) {
    result.same.push(id);
    return;
  }
  const tell = ({ message }: StorageState): void => {
    if (message !== undefined) result.problems.push(problem('syntax', message, { origin: titleIn(saved) }));
  };
  if (here) {
    const title = `${file.title.title} (backup of ${made.slice(0, 10)})`;
    const copy = await shop.create({ ...file, title: { ...file.title, title } });
    result.copies.push(copy);
    tell(await shop.dateRow(copy, {}));
    return;
  }
  const added = await shop.create(file, id === undefined ? {} : { id });
  result.added.push(added);
  const { removed, created, changed } = saved;
  const times = Object.entries({ removed, created, changed }).flatMap(([name, value]) => {
    const time = timeIn(value);
    return time === undefined ? [] : [[name, time] as const];
  });
  tell(await shop.dateRow(added, { archived: saved.archived === true, ...Object.fromEntries(times) }));
  for (const revision of Array.isArray(saved.revisions) ? saved.revisions : []) {
    if (!isPlain(revision) || typeof revision.text !== 'string') continue;
    const print = textIn(revision.fingerprint);
    const state = importText(revision.text);
    const isOwn = 'file' in state && (await shop.printer.isOf(print, state.file));
    await shop.vault.addRevision({
      sheet: added,
      time: timeIn(revision.time) ?? 0,
      label: textIn(revision.label),
      // Of another sheet, it would let that one pass for an earlier state of this.
      fingerprint: isOwn ? print : '',
      text: revision.text,
    });
  }
}

/** The title of a sheet of a backup, as far as there is one. */
const titleIn = (saved: unknown): string => {
  const file = isPlain(saved) && isPlain(saved.file) ? saved.file : {};
  const title = isPlain(file.title) ? file.title.title : undefined;
  return typeof title === 'string' ? title.slice(0, 80) : 'a sheet without a title';
};

const alike = (a: SheetFile, b: SheetFile): boolean => canonical(a) === canonical(b);

function readBackup(
  text: string,
): { sheets: unknown[]; settings: Record<string, unknown>; made: string } | Problem {
  let saved: unknown;
  try {
    saved = JSON.parse(text);
  } catch {
    return problem(
      'syntax',
      'This is not a backup of a shop, or it is cut short: the text ends or breaks off early.',
    );
  }
  if (!isPlain(saved) || saved.format !== BACKUP_FORMAT || !Array.isArray(saved.sheets)) {
    return problem('syntax', `This file is not a backup of a shop: its format is not ${BACKUP_FORMAT}.`);
  }
  if (saved.version !== 1) {
    return problem(
      'syntax',
      `This backup is of version ${JSON.stringify(saved.version)?.slice(0, 40)}; this edition reads version 1.`,
    );
  }
  return {
    sheets: saved.sheets,
    settings: isPlain(saved.settings) ? saved.settings : {},
    made: textIn(saved.made),
  };
}
