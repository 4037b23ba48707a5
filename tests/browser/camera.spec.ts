import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { encode } from 'uqr';
import { browserArguments } from '../../src/setup/browser.mjs';
import { expect, test } from './fixture.ts';
import { bringIn, dialog, showTool } from './share-steps.ts';
import { templateFile } from './sheet-steps.ts';

const KEY = 'abcdefghijklmnopqrstuv';
const found = JSON.parse(process.env.FITWRIGHT_BROWSER!);
const link = `http://127.0.0.1:${process.env.FITWRIGHT_PORT}/#/join/${KEY}`;

/** What a camera films that is held before a code: a still of YUV 4:2:0 as a YUV4MPEG2 stream, which the browser plays for one. */
const film = (text: string): string => {
  const [width, height, square] = [640, 480, 8];
  const { data, size } = encode(text, { border: 4 });
  const luma = Buffer.alloc(width * height, 200);
  const [left, top] = [(width - size * square) >> 1, (height - size * square) >> 1];
  for (let y = 0; y < size * square; y += 1)
    for (let x = 0; x < size * square; x += 1)
      luma[(top + y) * width + left + x] = data[Math.floor(y / square)]![Math.floor(x / square)] ? 40 : 220;
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, Buffer.alloc((width * height) / 2, 128)]);
  const file = join(mkdtempSync(join(tmpdir(), 'fitwright-film-')), 'code.y4m');
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`);
  writeFileSync(file, Buffer.concat([head, frame, frame, frame]));
  return file;
};

test.use({
  // As sharp as a photo of a screen is; a small one, for every pixel is searched.
  deviceScaleFactor: 2,
  viewport: { width: 820, height: 620 },
  launchOptions: {
    executablePath: found.path,
    args: [
      ...browserArguments,
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${film(link)}`,
    ],
    env: { ...(process.env as Record<string, string>), ...found.env },
  },
});

const photograph = (page: Page, pictures: Buffer) =>
  page
    .getByLabel('Photo of a code')
    .setInputFiles({ name: 'photo.png', mimeType: 'image/png', buffer: pictures });

test('the codes of a sheet are read from photos in any order; what is no code is said', async ({ page }) => {
  await bringIn(page, templateFile('worn-seat-sleeved.json'));
  await showTool(page, 'Share');
  const share = dialog(page, 'Share this sheet');
  await expect(share.getByRole('heading', { name: /As \d+ QR codes/ })).toBeVisible();
  const count = Number(
    /\d+/.exec((await share.getByRole('heading', { name: /QR codes/ }).textContent())!)![0],
  );
  const photos: Buffer[] = [];
  for (let k = 1; k <= count; k += 1) {
    photos.push(await share.getByRole('img', { name: `QR code ${k} of ${count}` }).screenshot());
    if (k < count) await share.getByRole('button', { name: 'Next code' }).click();
  }
  await page.goto('/#/open');
  // The page itself, without a code.
  await photograph(page, await page.screenshot());
  await expect(page.getByText('No code was found')).toBeVisible();
  await page
    .getByLabel('Photo of a code')
    .setInputFiles({ name: 'a.png', mimeType: 'image/png', buffer: Buffer.from('none') });
  await expect(page.getByText('no picture that this browser reads')).toBeVisible();
  for (const [k, photo] of photos.reverse().entries()) {
    await photograph(page, photo);
    if (k < count - 1) await expect(page.getByText(`Code ${count - k} of ${count} is here`)).toBeVisible();
  }
  await expect(page.getByRole('article', { name: 'The sheet that came in' })).toBeVisible();
});

test('live, the camera reads the code of a shop’s server, and leads to joining', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['camera']);
  await page.goto('/#/open');
  await page.getByRole('button', { name: 'Read codes with the camera' }).click();
  await expect(page.getByRole('button', { name: 'Join', exact: true })).toBeVisible();
  expect(page.url()).toBe(link.replace(`/${KEY}`, ''));
});
