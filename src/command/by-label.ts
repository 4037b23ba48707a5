import type { SheetFile } from '../../shared/sheet/format.ts';

/**
 * Words what is printed of a sheet, its lines called by their labels: names are for formulas and options, so theirs stands
 * behind it.
 */
export const byLabel = (file: SheetFile): ((text: string) => string) => {
  const labels = new Map(
    file.cells.flatMap(({ name, label }) => (name && label ? [[name.normalize('NFC'), label] as const] : [])),
  );
  const called = (name: string): string => {
    const label = labels.get(name.split(/[. ]/, 1)[0]?.normalize('NFC') ?? '');
    return label === undefined || label === name ? `“${name}”` : `“${label}” (${name})`;
  };
  return (text) => text.replace(/`([^`\n]*)`/g, (_, name: string) => called(name));
};

/** The same in every text of what is printed as JSON. */
export const jsonByLabel = (file: SheetFile, value: unknown): string => {
  const worded = byLabel(file);
  return JSON.stringify(value, (_, one) => (typeof one === 'string' ? worded(one) : one), 2);
};
