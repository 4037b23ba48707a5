import { fingerprint } from '../../../shared/sheet/fingerprint.ts';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import { readSheet } from '../../../shared/sheet/read.ts';
import { writeSheet } from '../../../shared/sheet/write.ts';
import type { Shop } from '../storage/shop.ts';

/** The template a job came from, as the shop has it now. */
export interface Origin {
  template: SheetFile;
  fingerprint: string;
  /** It says what it said when the job was begun from it, or last brought up to it. */
  current: boolean;
  /** As it was then, where that is still known. */
  base?: SheetFile;
}

type Stock = Pick<Shop, 'list' | 'file' | 'setting' | 'setSetting'>;

const key = (print: string): string => `template:${print.slice(0, 16)}`;

/** A sheet may name its template by the whole fingerprint or by its beginning. */
const names = (said: string, print: string): boolean => said.length >= 8 && print.startsWith(said);

/** Keeps a template as it is, so that a job begun from it can later be told what changed. */
export async function keepTemplate(shop: Pick<Shop, 'setting' | 'setSetting'>, template: SheetFile) {
  const at = key(fingerprint(template));
  if ((await shop.setting(at)) === undefined) await shop.setSetting(at, writeSheet(template));
}

/** @param supplied templates that come with the program. */
export async function originOf(
  shop: Stock,
  from: SheetFile['from'],
  supplied: readonly SheetFile[],
): Promise<Origin | undefined> {
  if (!from) return undefined;
  const rows = shop
    .list()
    .filter((row) => row.template && row.removed === undefined && row.title.title === from.title);
  const own = await Promise.all(rows.sort((a, b) => b.changed - a.changed).map((row) => shop.file(row.id)));
  const candidates = [
    ...own.filter((file): file is SheetFile => 'cells' in file),
    ...supplied.filter((file) => file.title.title === from.title),
  ].map((template) => ({ template, fingerprint: fingerprint(template) }));
  const same = candidates.find((one) => names(from.fingerprint, one.fingerprint));
  if (same) return { ...same, current: true, base: same.template };
  const [first] = candidates;
  if (!first) return undefined;
  const base = await keptTemplate(shop, from.fingerprint);
  return { ...first, current: false, ...(base && { base }) };
}

async function keptTemplate(shop: Stock, print: string): Promise<SheetFile | undefined> {
  const text = await shop.setting(key(print));
  if (typeof text !== 'string') return undefined;
  const read = readSheet(text);
  return 'file' in read && names(print, fingerprint(read.file)) ? read.file : undefined;
}
