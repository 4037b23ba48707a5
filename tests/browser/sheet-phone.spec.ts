import { expect, test } from './fixture.ts';
import { begin, enter, line, templateFile, value } from './sheet-steps.ts';

const blank = templateFile('keyway-next-key.json');

test.use({ viewport: { width: 390, height: 844 }, hasTouch: true });

const filled = templateFile('jobs/saw-arbor-bush.json');

test('on a phone a reading is typed into a card, and the page is never wider than the screen', async ({
  page,
}) => {
  await begin(page, filled.title.title);
  await enter(page, 'journal', '1.7475 in ± 0.0001 in');
  await expect(value(page, 'journal').locator('b')).toHaveText('1.7475\u00a0in');
  await expect(value(page, 'clearance_before').locator('.moved')).not.toBeEmpty();
  const width = await page.evaluate(() => document.documentElement.scrollWidth);
  expect(width).toBeLessThanOrEqual(390);
});

test('what is pressed on a phone is large enough for a thumb', async ({ page }) => {
  await begin(page, filled.title.title);
  const small = await page.evaluate(() =>
    [
      ...document.querySelectorAll<HTMLElement>(
        'button, select, input:not([type=checkbox], [type=file]), [data-column="entry"]',
      ),
    ]
      .filter((element) => element.checkVisibility() && !element.matches('.handle, .to-jobs'))
      .map((element) => ({ text: element.textContent?.slice(0, 30), box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 1 && box.height > 1 && box.height < 44)
      .map(({ text, box }) => `${text}: ${box.height}`),
  );
  expect(small).toEqual([]);
});

test('on a phone the bar is one row, an unfolded line lays its parts open one by one, and the chain is one column', async ({
  page,
}) => {
  await begin(page, filled.title.title);
  const bar = (await page.getByRole('toolbar', { name: 'Sheet' }).boundingBox())!;
  expect(bar.height).toBeLessThan(64);
  await line(page, 'bush_bore').locator('.label').click();
  const unfolded = page.getByRole('region', { name: 'Bush bore, finished, unfolded' });
  await expect(unfolded.getByLabel('Upper limit')).toBeHidden();
  await unfolded.locator('summary', { hasText: 'Limits' }).click();
  await expect(unfolded.getByLabel('Upper limit')).toBeVisible();

  await page.goto(`${page.url()}/chain`);
  await expect(page.locator('.chain-drawing').getByRole('link').first()).toBeVisible();
  expect(await page.locator('.chain-scroll').evaluate((element) => element.scrollWidth)).toBeLessThanOrEqual(
    390,
  );
});

test('a message on a phone lies on nothing that can be pressed, and undo and redo keep the bar one row', async ({
  page,
}) => {
  await begin(page, blank.title.title);
  await enter(page, 'power', '10 hp');
  await enter(page, 'speed', '320 rpm');
  await page.getByRole('button', { name: /^Undo/ }).click();
  await expect(page.locator('.notice')).toContainText('Taken back');
  // At the end of the page, where the foot stands: figures that come in move it.
  const covered = () =>
    page.evaluate(() => {
      scrollTo(0, document.documentElement.scrollHeight);
      const top = document.querySelector('.notice')!.getBoundingClientRect().top;
      return [...document.querySelectorAll<HTMLElement>('.foot button, .foot a, .next-entry button')]
        .filter((element) => element.getBoundingClientRect().bottom > top)
        .map((element) => element.textContent);
    });
  await expect.poll(covered).toEqual([]);
  // Whatever is said of saving, and at its widest where it is not saved.
  const heights = await page.getByRole('toolbar', { name: 'Sheet' }).evaluate((bar) =>
    ['saved', 'saving …', 'not saved'].map((words) => {
      const state = bar.querySelector<HTMLElement>('[role="status"]')!;
      state.style.fontWeight = 'bold';
      state.textContent = words;
      return bar.clientHeight;
    }),
  );
  expect(Math.max(...heights)).toBeLessThan(64);
});

test('what can be done with chosen lines stays above a message, and off the pad at the machine', async ({
  page,
  context,
}) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await begin(page, filled.title.title);
  await page.getByRole('button', { name: 'Choose lines' }).click();
  await line(page, 'journal').getByRole('checkbox').check();
  const bar = page.getByRole('toolbar', { name: 'Chosen lines' });
  await bar.getByRole('button', { name: 'Copy', exact: true }).click();
  await expect(page.locator('.notice')).toContainText('Copied');
  await expect
    .poll(async () => {
      const [low, top] = await Promise.all([bar.boundingBox(), page.locator('.notice').boundingBox()]);
      return low!.y + low!.height - top!.y;
    })
    .toBeLessThanOrEqual(0);
  await page.getByRole('link', { name: 'At the machine' }).click();
  await expect(page.getByRole('group', { name: 'Keypad' })).toBeVisible();
  await expect(bar).toBeHidden();
  await expect(page.locator('.notice')).toHaveCount(0);
});

test('where a line is added, nothing lies on the field that is typed in', async ({ page }) => {
  await begin(page, blank.title.title);
  await page.getByRole('button', { name: 'Add a line', exact: true }).click();
  const field = page.getByLabel('What it is');
  await expect(field).toBeFocused();
  const onTop = () =>
    field.evaluate((element) => {
      const { left, top, width, height } = element.getBoundingClientRect();
      return document.elementFromPoint(left + width / 2, top + height / 2) === element;
    });
  await expect.poll(onTop).toBe(true);
});
