import { exportText, fileName } from '../../document/files.ts';
import type { SheetDocument } from '../../document/sheet-document.ts';

/** Gives the sheet to the browser as a file to keep. */
export const saveToFile = (sheet: SheetDocument): void => {
  const url = URL.createObjectURL(new Blob([exportText(sheet.toFile())], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName(sheet.title().title, sheet.template() ? 'template' : '');
  link.click();
  // The download has to have begun before the address goes.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
};
