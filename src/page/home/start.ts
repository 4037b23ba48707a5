import type { SheetFile } from '../../../shared/sheet/format.ts';
import { FORMAT, VERSION } from '../../../shared/sheet/format.ts';
import { addressOfSheet, go } from '../router.ts';
import { tellOnArrival } from '../state/arrival.ts';
import { loadShop } from '../state/load-shop.ts';

const today = (): string => {
  const now = new Date();
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

const open = async (file: SheetFile): Promise<void> => {
  const shop = await loadShop();
  go(addressOfSheet(await shop.create(file)));
};

/** A job from a template: it remembers which one it came from. */
export const startFromTemplate = async (template: SheetFile): Promise<void> => {
  const { shortFingerprint } = await import('../../../shared/sheet/fingerprint.ts');
  const { template: _template, ...file } = structuredClone(template);
  await open({
    ...file,
    title: { ...file.title, date: today() },
    from: { title: template.title.title, fingerprint: shortFingerprint(template) },
  });
};

export const startEmpty = (length: 'in' | 'mm'): Promise<void> =>
  open({
    format: FORMAT,
    version: VERSION,
    title: { title: 'New job', date: today() },
    units: { length },
    rule: 'iso14253-2013',
    cells: [],
  });

export const openCopy = (file: SheetFile): Promise<void> => open(structuredClone(file));

/** @returns what is wrong with the file, in words, where it is not a sheet. */
export const importFile = async (file: File): Promise<string | undefined> => {
  const { importText } = await import('../../document/files.ts');
  const read = importText(await file.text());
  if ('message' in read) return `${file.name}: ${read.message}`;
  if (read.warnings.length > 0) tellOnArrival(read.warnings.join(' '));
  await open(read.file);
  return undefined;
};
