import type { Locator, Page } from '@playwright/test';
import { findings } from './axe-findings.ts';
import { expect, test } from './fixture.ts';
import { begin, line, templateFile } from './sheet-steps.ts';

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const template = templateFile('bush-in-opened-out-bore.json').title.title;

const key = async (page: Page, text: string): Promise<void> => {
  const pad = page.getByRole('group', { name: 'Keypad' });
  for (const c of text) {
    const name = c === '.' ? 'Decimal mark' : c === '/' ? 'Stroke of a fraction' : c === ' ' ? /^Blank/ : c;
    await pad.getByRole('button', { name, exact: true }).tap();
  }
};
const take = (page: Page) => page.getByRole('button', { name: 'Take it' }).tap();
const reading = (page: Page) => page.getByRole('textbox', { name: /^Reading of/ });
const readings = (page: Page) => page.getByRole('list', { name: 'Readings' }).getByRole('button');

const atTheMachine = async (page: Page): Promise<void> => {
  await page.getByRole('link', { name: 'At the machine' }).tap();
  await expect(page.getByRole('group', { name: 'Keypad' })).toBeVisible();
};

test('readings are taken one at a time with the last leading digits kept, and stand on the sheet', async ({
  page,
}) => {
  await begin(page, template);
  await atTheMachine(page);
  await expect(page.getByLabel('Dimension').locator('option:checked')).toContainText('Journal');
  await expect(page.getByRole('main')).toContainText('Micrometer');
  await expect(page.getByRole('img', { name: 'Place 1 of 3 along, direction 1 of 2 round' })).toBeVisible();
  // Nothing stands there that nobody read.
  await expect(reading(page)).toHaveValue('');
  await key(page, '1.7481');
  await take(page);
  await expect(readings(page).first()).toHaveText('1.7481');
  await expect(reading(page)).toHaveValue('1.74');
  // What a bare number counts as stands beside it.
  await expect(page.locator('.bench-unit')).toHaveText('in');
  // The digits taken over are no reading by themselves.
  await expect(page.getByRole('button', { name: 'Take it' })).toBeDisabled();
  await key(page, '79');
  await take(page);
  await expect(page.getByRole('img', { name: 'Place 2 of 3 along, direction 1 of 2 round' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'What it comes to' })).toContainText('1.7480');
  await expect(page.getByRole('region', { name: 'What it comes to' }).locator('.verdict')).toBeVisible();

  // A press on a reading takes it again.
  await readings(page).nth(1).tap();
  await key(page, '81');
  await page.getByRole('button', { name: 'Take again' }).tap();
  await expect(readings(page).nth(1)).toHaveText('1.7481');

  // What was keyed in and not taken is told of, and stays where it was keyed in.
  await key(page, '8');
  await page.getByRole('button', { name: 'Next', exact: true }).tap();
  await expect(page.getByLabel('Dimension').locator('option:checked')).toContainText(
    'Gap between thrust collars',
  );
  await expect(page.getByText(/“1\.748” was keyed in for .* and is not taken yet/)).toBeVisible();
  await page.getByRole('button', { name: 'Back to it' }).tap();
  await expect(reading(page)).toHaveValue('1.748');
  await page.getByRole('button', { name: 'Clear' }).tap();
  await page.getByRole('link', { name: 'Back to the sheet' }).tap();
  await expect(line(page, 'journal').locator('.typed')).toHaveText('1.7481; 1.7481 in');
});

test('a fraction is keyed in, and a reading that is probably wrong is asked about', async ({ page }) => {
  // As low as a phone's screen is under the bar of its browser.
  await page.setViewportSize({ width: 390, height: 664 });
  await begin(page, template);
  await atTheMachine(page);
  await key(page, '1 3/4');
  await expect(reading(page)).toHaveValue('1 3/4');
  // In one task of the page: the next digit is struck before the figures of the first reading can be in, and stays.
  await page.evaluate(() => {
    const named = (words: string) =>
      [...document.querySelectorAll<HTMLButtonElement>('.pad button')].find((b) => b.textContent === words)!;
    named('Take it').click();
    named('1').click();
  });
  await expect(readings(page).first()).toHaveText('1 3/4');
  await expect(page.getByRole('region', { name: 'What it comes to' })).toContainText('1.75');
  const pad = page.getByRole('group', { name: 'Keypad' });
  const keys = await pad.boundingBox();
  await key(page, '.7250');
  await expect(reading(page)).toHaveValue('1.7250');
  await take(page);
  const asked = page.getByRole('note');
  await expect(asked).toContainText(/turn/);
  // The keys stay under the thumb, and what came in stands above them.
  const foot = async (box: Locator) => {
    const at = await box.boundingBox();
    return at!.y + at!.height;
  };
  await expect.poll(async () => (await foot(asked)) <= (await reading(page).boundingBox())!.y).toBe(true);
  await expect.poll(() => pad.boundingBox()).toEqual(keys);
});

test('every key is large enough for a gloved thumb, all of it is on one screen, and axe finds nothing', async ({
  page,
}) => {
  await begin(page, template);
  await atTheMachine(page);
  await key(page, '1.7481');
  await take(page);
  await expect(readings(page).first()).toHaveText('1.7481');
  const heights = await page
    .locator('.pad button, .bench-ways button, .bench-what select, .bench-entry input')
    .evaluateAll((elements) => elements.map((element) => element.getBoundingClientRect().height));
  expect(heights.length).toBeGreaterThan(17);
  expect(Math.min(...heights)).toBeGreaterThanOrEqual(56);
  const page390 = await page.evaluate(() => ({
    width: document.documentElement.scrollWidth,
    height: document.documentElement.scrollHeight,
  }));
  expect(page390.width).toBeLessThanOrEqual(390);
  expect(page390.height).toBeLessThanOrEqual(844);
  expect(await findings(page)).toEqual([]);
});

test('readings go on without a network, and by a keyboard', async ({ page, context }) => {
  await begin(page, template);
  await atTheMachine(page);
  await key(page, '1.7481');
  await take(page);
  await expect(readings(page).first()).toHaveText('1.7481');
  await context.setOffline(true);
  await reading(page).focus();
  await page.keyboard.type('83');
  await page.keyboard.press('Enter');
  await expect(readings(page).nth(1)).toHaveText('1.7483');
  await context.setOffline(false);
});

test('what is no reading is refused with a word, and kept to be put right', async ({ page }) => {
  await begin(page, template);
  await atTheMachine(page);
  await reading(page).fill('1.74.8');
  await reading(page).press('Enter');
  await expect(page.getByText('“1.74.8” is no reading')).toBeVisible();
  await expect(reading(page)).toHaveValue('1.74.8');
  await reading(page).fill('1.748');
  await expect(page.getByText('is no reading')).toHaveCount(0);
});
