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

type Stock = Pick<Shop, 'list' | 'file' | 'setting' | 'setSetting' | 'printer'>;

/** Older editions kept a template under the beginning of its fingerprint. */
const keysOf = (print: string): string[] => [`template:${print}`, `template:${print.slice(0, 16)}`];

/** Keeps a template as it is, so that a job begun from it can later be told what changed. */
export async function keepTemplate(
  shop: Pick<Shop, 'setting' | 'setSetting' | 'printer'>,
  template: SheetFile,
) {
  const at = keysOf(await shop.printer.print(template))[0]!;
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
  const candidates = await Promise.all(
    [
      ...own.filter((file): file is SheetFile => 'cells' in file),
      ...supplied.filter((file) => file.title.title === from.title),
    ].map(async (template) => ({
      template,
      fingerprint: await shop.printer.print(template),
      named: await shop.printer.isOf(from.fingerprint, template),
    })),
  );
  const same = candidates.find(({ named }) => named);
  if (same)
    return { template: same.template, fingerprint: same.fingerprint, current: true, base: same.template };
  const [first] = candidates;
  if (!first) return undefined;
  const base = await keptTemplate(shop, from.fingerprint);
  const { template, fingerprint } = first;
  return { template, fingerprint, current: false, ...(base && { base }) };
}

async function keptTemplate(shop: Stock, print: string): Promise<SheetFile | undefined> {
  for (const key of keysOf(print)) {
    const text = await shop.setting(key);
    const read = typeof text === 'string' ? readSheet(text) : undefined;
    if (read && 'file' in read && (await shop.printer.isOf(print, read.file))) return read.file;
  }
  return undefined;
}
