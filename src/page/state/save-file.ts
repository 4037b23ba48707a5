import { exportText, fileName } from '../../document/files.ts';
import type { SheetDocument } from '../../document/sheet-document.ts';
import { written } from './printer.ts';

/** Gives the sheet to the browser as a file to keep. */
export const saveToFile = async (sheet: SheetDocument): Promise<void> => {
  const text = exportText(await written(sheet.toFile()));
  const url = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName(sheet.title().title, sheet.template() ? 'template' : '');
  link.click();
  // The download has to have begun before the address goes.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
};
