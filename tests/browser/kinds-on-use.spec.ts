import { readdirSync } from 'node:fs';
import type { Page } from '@playwright/test';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { expect, test } from './fixture.ts';
import { type OwnServer, ownServer } from './own-server.ts';
import { enter, figuresAreIn, line, value } from './sheet-steps.ts';

// What is asked for goes to the server, and not to what the browser keeps for when there is none.
test.use({ serviceWorkers: 'block', permissions: ['clipboard-read', 'clipboard-write'] });

let server: OwnServer;
test.beforeEach(async () => {
  server = await ownServer();
});
test.afterEach(() => server.stop().catch(() => {}));

const kinds = readdirSync(new URL('../../cells/kinds', import.meta.url)).map((name) => name.slice(0, -3));
/** Kind of cell that a script of the page is of. */
const kindOf = (url: string): string | undefined => {
  const path = new URL(url, server.address).pathname;
  const kind = kinds.find((one) => path.startsWith(`/assets/${one}-`));
  return kind && server.site.get(path)?.plain.includes(`key:\`${kind}\`,edition:`) ? kind : undefined;
};

/** Kinds of cell whose script is asked for from now on, by the page or a worker. */
const asked = (page: Page): Set<string> => {
  const found = new Set<string>();
  page.context().on('request', (request) => {
    const kind = kindOf(request.url());
    if (kind) found.add(kind);
  });
  return found;
};

const sheet = (...cells: CellRecord[]): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Boss of the gearbox' },
  units: { length: 'mm' },
  rule: 'worst-case',
  cells,
});

const bore: CellRecord = {
  id: 'a',
  role: 'given',
  name: 'bore',
  quantity: 'length',
  entry: '20 mm ± 0.1 mm',
};
const twice: CellRecord = { id: 'b', role: 'worked', name: 'twice', quantity: 'length', entry: '=2 * bore' };
const wall: CellRecord = {
  id: 'c',
  role: 'cell',
  kind: 'wall-left',
  name: 'wall',
  inputs: { bore: '=bore', outside: '30 mm', offset: '0 mm' },
};
const half: CellRecord = {
  id: 'd',
  role: 'worked',
  name: 'half',
  quantity: 'length',
  entry: '=wall.thinnest / 2',
};

const open = async (page: Page, file: SheetFile): Promise<void> => {
  await page.goto(server.address);
  await page.getByLabel('Open a file').setInputFiles({
    name: 'boss.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeSheet(file)),
  });
  await page.getByRole('button', { name: 'Take it over as a new sheet' }).click();
  await expect(page.getByRole('grid')).toBeVisible();
  await figuresAreIn(page);
};

test('kinds of cell come in as a job that is edited uses them', async ({ page }) => {
  const seen = asked(page);
  await open(page, sheet(bore, twice));
  await expect(value(page, 'twice')).toContainText('40.00');
  expect([...seen]).toEqual([]);
  await line(page, 'twice').locator('[data-column="name"]').focus();
  await page.evaluate((text) => navigator.clipboard.writeText(text), writeSheet(sheet(wall, half)));
  await page.keyboard.press('ControlOrMeta+v');
  await expect(value(page, 'half')).toContainText('2.50');
  await expect(line(page, 'wall')).toContainText('Wall left');
  expect([...seen]).toEqual(['wall-left']);
  await page.keyboard.press('ControlOrMeta+z');
  await expect(line(page, 'wall')).toHaveCount(0);
  await enter(page, 'bore', '22 mm');
  await page.keyboard.press('ControlOrMeta+z');
  await page.keyboard.press('ControlOrMeta+y');
  await expect(value(page, 'twice')).toContainText('44.00');
});

test('where a kind of cell does not come its lines say so, the others go on, and the next entry brings it', async ({
  page,
  expectComplaint,
}) => {
  // The browser reports what it could not fetch.
  expectComplaint(/404/);
  const path = [...server.site.keys()].find((one) => kindOf(one) === 'wall-left')!;
  const file = server.site.get(path)!;
  server.site.delete(path);
  await open(page, sheet(bore, twice, wall, half));
  await expect(value(page, 'twice')).toContainText('40.00');
  const said = page.getByText('What the library has for "wall-left" could not be fetched.').first();
  await expect(said).toBeVisible();
  await expect(page.getByText('has no cell')).toHaveCount(0);
  await enter(page, 'bore', '21 mm');
  await expect(value(page, 'twice')).toContainText('42.00');
  await expect(said).toBeVisible();

  server.site.set(path, file);
  await enter(page, 'bore', '20 mm');
  await expect(value(page, 'half')).toContainText('2.50');
  await expect(said).toHaveCount(0);
  await expect(line(page, 'wall')).toContainText('Wall left');
});
