import type { Locator, Page } from '@playwright/test';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { expect } from './fixture.ts';
import { figuresAreIn } from './sheet-steps.ts';

/** A short inch job of the shingle mill: a bush for the countershaft. */
export const shortJob = (cells: Partial<CellRecord>[] = []): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Countershaft bush', machine: 'shingle mill', drawnBy: 'E. Quill', tags: ['bush', 'mill'] },
  units: { length: 'in' },
  rule: 'worst-case',
  cells: [
    { id: 'c1', role: 'section', label: 'The housing' },
    {
      id: 'c2',
      role: 'measured',
      name: 'bore',
      label: 'Bore',
      quantity: 'length',
      entry: '2.2513 in ± 0.0002 in',
    },
    {
      id: 'c3',
      role: 'chosen',
      name: 'od',
      label: 'Bush outside diameter',
      quantity: 'length',
      entry: '=bore + 3 thou',
      tolerance: '+0.0005 -0 in',
      limits: { lower: '=bore + 2 thou', upper: '=bore + 4.2 thou' },
      locked: true,
    },
    {
      id: 'c4',
      role: 'worked',
      name: 'grip',
      label: 'Interference',
      quantity: 'length',
      entry: '=od - bore',
      display: 'thou',
    },
    ...(cells as CellRecord[]),
  ],
});

const asUpload = (file: unknown, name: string) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(typeof file === 'string' ? file : JSON.stringify(file)),
});

/** Gives a file to the first page, which shows what is in it. */
export const lookAt = async (page: Page, file: unknown, name = 'sheet.json', at = '/'): Promise<void> => {
  await page.goto(`${at}#/`);
  await page.getByLabel('Open a file').setInputFiles(asUpload(file, name));
};

export const takeOver = async (page: Page): Promise<void> => {
  await page
    .getByRole('button', { name: /^(Take it over as a new sheet|Keep it among the templates)$/ })
    .click();
  await figuresAreIn(page);
};

/** Looks at a file and takes it over. */
export const bringIn = async (page: Page, file: unknown): Promise<void> => {
  await lookAt(page, file);
  await takeOver(page);
};

export const dialog = (page: Page, title: string): Locator => page.getByRole('dialog', { name: title });

export const showTool = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('toolbar', { name: 'Sheet' }).getByRole('button', { name, exact: true }).click();
};

/** The code of the sheet that is open, out of its dialog, which stays open. */
export const codeOfSheet = async (page: Page): Promise<string> => {
  await showTool(page, 'Share');
  const field = page.locator('#share-code');
  await expect(field).toHaveValue(/^A/);
  return field.inputValue();
};

export const isSaved = (page: Page): Promise<void> =>
  expect(page.locator('.saved-state')).toHaveText('saved');
