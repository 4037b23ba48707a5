import { browserArguments } from '../../src/setup/browser.mjs';
import { expect, test } from './fixture.ts';
import { codeOfSheet, dialog, isSaved } from './share-steps.ts';
import { begin, enter, figuresAreIn, templateFile, value } from './sheet-steps.ts';

/** A name that is not this machine's own: what a phone gets that asks another machine over plain HTTP. */
const HOST = 'shop.test';
const found = JSON.parse(process.env.FITWRIGHT_BROWSER!);

test.use({
  baseURL: `http://${HOST}:${process.env.FITWRIGHT_PORT}/`,
  launchOptions: {
    executablePath: found.path,
    args: [...browserArguments, `--host-resolver-rules=MAP ${HOST} 127.0.0.1`],
    env: { ...(process.env as Record<string, string>), ...found.env },
  },
});

const held = 'What this browser holds back';

test('over plain HTTP from another machine a job is begun, entered, read at the machine, kept and handed on', async ({
  page,
  expectComplaint,
}) => {
  // The header says nothing on such a page, and the browser says so.
  expectComplaint(/Cross-Origin-Opener-Policy/);
  await page.goto('/');
  expect(await page.evaluate(() => isSecureContext)).toBe(false);
  // What the browser withholds is said, once.
  await page
    .getByRole('complementary', { name: held })
    .getByRole('button', { name: 'I have read it' })
    .click();
  await begin(page, templateFile('bush-in-opened-out-bore.json').title.title);
  await expect(page.getByRole('complementary', { name: held })).toHaveCount(0);
  await enter(page, 'journal', '1.7481; 1.7480; 1.7481 in');
  await expect(value(page, 'journal')).toContainText('1.7481');
  await page.getByRole('link', { name: 'At the machine' }).click();
  await page.getByRole('textbox', { name: /^Reading of/ }).fill('1.7482');
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByRole('list', { name: 'Readings' }).getByRole('button').first()).toHaveText('1.7482');
  await page.getByRole('link', { name: 'Back to the sheet' }).click();
  await isSaved(page);
  await page.reload();
  await figuresAreIn(page);
  await expect(value(page, 'journal')).toContainText('1.7481');

  // Copied without the clipboard of https, and read again by a page that is given it.
  const code = await codeOfSheet(page);
  await page.getByRole('button', { name: 'Copy the text' }).click();
  await expect(dialog(page, 'Share this sheet')).toContainText('The code is on the clipboard.');
  await expect(page.locator('.fingerprint')).toHaveText(/^(?:\w{4} ){4}\w{4}$/);
  await page.goto('/#/open');
  await page.getByLabel('Or paste a text or a link').focus();
  await page.keyboard.press('ControlOrMeta+v');
  await expect(page.getByRole('article', { name: 'The sheet that came in' })).toBeVisible();
  expect(code.length).toBeGreaterThan(100);
});
