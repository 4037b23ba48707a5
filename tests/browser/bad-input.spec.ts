import type { Locator, Page } from '@playwright/test';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { expect, test } from './fixture.ts';
import { bringIn, lookAt } from './share-steps.ts';
import { check, enter, figuresAreIn, line, typeInto, value } from './sheet-steps.ts';

/** What a person may type wrong: the line says what and what to do, nothing is lost, and the rest of the sheet lives on. */

const length = (name: string, role: CellRecord['role'], entry: string, more: Partial<CellRecord> = {}) => ({
  id: `c_${name}`,
  role,
  name,
  label: `The ${name}`,
  quantity: 'length',
  entry,
  ...more,
});

const sheet = (cells: readonly CellRecord[] = []): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Countershaft, shingle mill' },
  units: { length: 'in' },
  rule: 'worst-case',
  cells: [
    length('bore', 'measured', '1.7510 in ± 0.0002 in'),
    length('journal', 'measured', '1.7480 in ± 0.0002 in'),
    length('clearance', 'worked', '=bore - journal', {
      display: 'thou',
      limits: { lower: '2 thou', upper: '4 thou' },
    }),
    length('odd', 'given', '2 in'),
    length('below', 'worked', '=odd * 2'),
    ...cells,
  ],
});

/** The rest of the sheet: what does not depend on the odd line stands, and takes edits. */
const restLives = async (page: Page, journal: string, clearance: string): Promise<void> => {
  await enter(page, 'journal', `${journal} in ± 0.0002 in`);
  await expect(value(page, 'clearance').locator('b')).toHaveText(`${clearance}\u00a0thou`);
  await expect(check(page, 'clearance')).toContainText('proven in limits');
};

const typed = (page: Page, name: string): Locator => line(page, name).locator('.typed');

test('every wrong entry is told on its line, kept as typed, and waited for below', async ({ page }) => {
  test.slow();
  await bringIn(page, sheet());
  const wrong: Array<[text: string, said: RegExp, below?: RegExp]> = [
    ['5 lbf', /a length is wanted here, 5 lbf is a force/],
    ['1/0', /divides by zero/],
    ['=1/0', /the formula gives a plain number/],
    ['=2 in / (bore - bore) * 1 in', /Division by zero/],
    ['=1/0 * 1 in', /Division by zero/],
    ['=jurnal * 2', /no cell named “jurnal”.*Is “journal” meant/],
    ['=below + 1 in', /ring: odd → below → odd/, /ring: below → odd → below/],
    ['=odd', /ring: odd → odd/],
    ['=bore + 20 degC', /length.*temperature/],
    [`=${'('.repeat(200)}1${')'.repeat(200)}`, /nested 200 levels deep; at most 64/],
    ['x'.repeat(100_000), /has 100000 characters; at most 4000/],
    ['2.2510-2.2515', /limits of size, or is one to be taken/],
    ['=10^400 * 1 in', /no finite number/],
    ['½', /is 1\/2 meant/],
  ];
  for (const [i, [text, said, below]] of wrong.entries()) {
    await test.step(text.slice(0, 30), async () => {
      await enter(page, 'odd', text);
      await expect(check(page, 'odd')).toContainText(said);
      await expect(value(page, 'odd').locator('b')).toHaveCount(0);
      if (below) await expect(check(page, 'below')).toContainText(below);
      else await expect(check(page, 'below')).toContainText(/Waits for “The odd”/);
      expect((await typed(page, 'odd').textContent())?.length).toBeGreaterThanOrEqual(text.length);
      await restLives(page, i % 2 === 0 ? '1.7481' : '1.7480', i % 2 === 0 ? '2.9' : '3.0');
    });
  }

  // It is all there after a reload, and mended as soon as it is put right.
  await expect(page.locator('.saved-state')).toHaveText('saved');
  await page.reload();
  await figuresAreIn(page);
  await expect(typed(page, 'odd')).toHaveText('½');
  await line(page, 'odd').locator('[data-column="name"]').click();
  // Unfolded, it is said once: there, with what to do about it.
  await expect(page.locator('.unfold .problem')).toContainText('is 1/2 meant');
  await expect(check(page, 'odd').locator('.problem')).toBeHidden();
  await page.getByRole('button', { name: '1/2', exact: true }).click();
  await expect(value(page, 'below').locator('b')).toHaveText('1.0000\u00a0in');
});

test('a name that is refused stays as typed, with the reason, when its line is drawn anew', async ({
  page,
}) => {
  await bringIn(page, sheet());
  const name = page.getByLabel('Name in formulas');
  const unfold = (of: string) => line(page, of).locator('[data-column="name"]').click();
  await unfold('odd');
  await name.fill('journal');
  await name.press('Enter');
  const reason = page.getByText('journal is already the name');
  await expect(reason).toBeVisible();
  await unfold('below');
  await expect(name).toHaveValue('below');
  await expect(reason).toHaveCount(0);
  await unfold('odd');
  await expect(name).toHaveValue('journal');
  await expect(reason).toBeVisible();
  await name.fill('even');
  await name.press('Enter');
  await expect(reason).toHaveCount(0);
  await expect(name).toHaveValue('even');
  await expect(line(page, 'even')).toHaveCount(1);
});

test('blank, huge and foreign-lettered entries and names are taken for what they are', async ({ page }) => {
  await bringIn(page, sheet([length('größe', 'given', '25.4 mm'), length('径', 'worked', '=größe * 12')]));
  await expect(value(page, '径').locator('b')).toHaveText('12.0000\u00a0in');
  await enter(page, 'odd', '');
  await expect(line(page, 'odd')).toContainText('type the size given');
  await expect(check(page, 'odd')).toHaveText('waiting');
  await expect(check(page, 'below')).toContainText('Waits for “The odd”');
  await enter(page, 'odd', '1e300 in');
  await expect(value(page, 'odd').locator('b')).toHaveText(/^1×10³⁰⁰\s+in$/);
  await enter(page, 'below', '=odd * odd / 1 in');
  await expect(check(page, 'below')).toContainText('not a finite number');
  await enter(page, 'größe', '50 mm');
  await expect(value(page, '径').locator('b')).toHaveText('23.6220\u00a0in');
});

test('a press of impossible sizes says which and why', async ({ page }) => {
  const material = (name: string, key: string): CellRecord => ({
    id: `c_${name}`,
    role: 'cell',
    kind: 'material',
    name,
    inputs: { material: key },
  });
  await bringIn(
    page,
    sheet([
      material('bronze', 'c93200'),
      material('iron', 'gray-iron-30'),
      {
        id: 'c_press',
        role: 'cell',
        kind: 'bush-close-in',
        name: 'press',
        label: 'Bush pressed in',
        inputs: {
          bush_outside: '2.2515 in',
          bush_bore: '1.75 in',
          interference: '0.0015 in',
          housing_outside: '4 in',
          bush_material: 'bronze',
          housing_material: 'iron',
        },
      },
    ]),
  );
  const input = (name: string) =>
    page.locator(`[data-row$="/in/${name}"][data-cell="${id}"] [data-column="entry"]`);
  const id = await line(page, 'press').getAttribute('data-cell');
  const face = page.locator(`[data-cell="${id}"]`);
  const sound: Record<string, string> = {
    bush_outside: '2.2515 in',
    bush_bore: '1.75 in',
    interference: '0.0015 in',
  };
  for (const [name, text, said] of [
    ['interference', '-0.001 in', /The fit is loose/],
    ['interference', '0 in', /The fit is loose/],
    ['bush_bore', '3 in', /smaller than its outside/],
    ['bush_outside', '-2 in', /smaller than its outside/],
    ['bush_bore', '1.75 kg', /a length is wanted here, 1.75 kg is a mass/],
  ] as const) {
    await test.step(`${name}: ${text}`, async () => {
      await line(page, 'press').locator('.label').click();
      await typeInto(page, input(name), text);
      await expect(face.filter({ hasText: said }).first()).toBeVisible();
      await restLives(page, '1.7480', '3.0');
      await line(page, 'press').locator('.label').click();
      await typeInto(page, input(name), sound[name] as string);
      await expect(face.filter({ hasText: said })).toHaveCount(0);
    });
  }
});

test('a tolerance, a limit and a measured size that cannot be read prove nothing, and are put right at a touch', async ({
  page,
}) => {
  await bringIn(
    page,
    sheet([
      length('bush', 'chosen', '2 in', { limits: { lower: '1.99 in', upper: '2.01 in', metalOn: 'high' } }),
    ]),
  );
  await expect(check(page, 'bush')).toContainText('holds');
  await line(page, 'bush').locator('[data-column="name"]').click();
  await page.getByRole('textbox', { name: /^Tolerance/ }).click();
  await page.keyboard.type('+5 -0');
  await page.keyboard.press('Enter');
  await expect(check(page, 'bush')).toContainText('The tolerance of “The bush” cannot be read.');
  await expect(check(page, 'bush').locator('.word')).toHaveText('entry in error');
  await page.getByRole('button', { name: '+5 -0 thou' }).first().click();
  await expect(value(page, 'bush')).toContainText('+0.0050 -0.0000');
  await expect(check(page, 'bush')).toContainText('holds');

  await page.getByRole('textbox', { name: 'Size as measured' }).click();
  await page.keyboard.type('2.0010 +.0001 -.0002');
  await page.keyboard.press('Enter');
  await expect(check(page, 'bush').locator('.word')).not.toContainText('proven');
  await page.getByRole('button', { name: '2.0010 ± .0002' }).first().click();
  await expect(check(page, 'bush')).toContainText('proven in limits');
  await expect(value(page, 'bush')).toContainText('2.0010');

  // What is shown in thou has its limits in thou as often as not.
  await line(page, 'clearance').locator('[data-column="name"]').click();
  await page.getByRole('textbox', { name: 'Upper limit' }).click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type('5');
  await page.keyboard.press('Enter');
  await expect(check(page, 'clearance').locator('.word')).toHaveText('waiting');
  await page.getByRole('button', { name: '5 thou', exact: true }).click();
  await expect(check(page, 'clearance')).toContainText('proven in limits');
});

test('at the machine a size as cut that is probably wrong is asked about', async ({ page }) => {
  await bringIn(
    page,
    sheet([
      length('bush', 'chosen', '2 in', {
        tolerance: '+.001 -0',
        limits: { lower: '2 in', upper: '2.001 in' },
      }),
    ]),
  );
  await page.getByRole('link', { name: 'At the machine' }).click();
  const dimension = page.getByLabel('Dimension', { exact: true });
  const bush = dimension.locator('option', { hasText: 'The bush' });
  await dimension.selectOption((await bush.first().getAttribute('value')) as string);
  await page.getByRole('textbox', { name: /^Reading of/ }).fill('1.9755');
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.getByRole('note')).toContainText('one turn out');
  await page.getByRole('button', { name: 'take 2.0005' }).click();
  await expect(page.getByRole('note')).toHaveCount(0);
  const outcome = page.getByRole('region', { name: 'What it comes to' });
  await expect(outcome).toContainText('not proven');
  await expect(outcome).toContainText('Name its gauge, or write ± behind it');
  await page.getByRole('link', { name: 'Back to the sheet' }).click();
  await expect(line(page, 'bush').locator('.remark-note')).toContainText('Name its gauge, or write ±');
});

test('limits the wrong way round say so on their line', async ({ page }) => {
  await bringIn(
    page,
    sheet([length('bush', 'chosen', '2 in', { limits: { lower: '3 in', upper: '1 in' } })]),
  );
  await expect(line(page, 'bush').locator('.remark-note')).toContainText('the wrong way round');
});

test('damaged and foreign files are refused with a reason, and the sheets that are here stay', async ({
  page,
}) => {
  await bringIn(page, sheet());
  const address = page.url();
  for (const [name, text, said] of [
    ['torn.json', '{"format": "fitwright-sheet", "version": 1, "cel', /not JSON/],
    ['letter.json', '{"name": "left-pad"}', /not a job sheet/],
    ['empty.json', '', /empty/],
    ['later.json', '{"format":"fitwright-sheet","version":99}', /newer/],
    ['deep.json', `${'['.repeat(5000)}${']'.repeat(5000)}`, /levels deep/],
    ['picture.png', '\u0089PNG\r\n\u001a\n\u0000\u0000', /not JSON|not a job sheet/],
  ] as const) {
    await test.step(name, async () => {
      await lookAt(page, text, name);
      await expect(page.getByRole('alert')).toContainText(name);
      await expect(page.getByRole('alert')).toContainText(said);
    });
  }
  await page.goto(address);
  await figuresAreIn(page);
  await expect(value(page, 'clearance').locator('b')).toHaveText('3.0\u00a0thou');
});

test('a bare number of a file keeps its size when the sheet is shown in millimetres', async ({ page }) => {
  await bringIn(page, sheet([length('bare', 'given', '2.25')]));
  await expect(value(page, 'bare').locator('b')).toHaveText('2.2500\u00a0in');
  await page.getByRole('button', { name: 'mm', exact: true }).click();
  await expect(value(page, 'bare').locator('b')).toHaveText('57.150\u00a0mm');
  await expect(typed(page, 'bare')).toHaveText('2.25 in');
  await page.getByRole('button', { name: /^Undo: units of the sheet/ }).click();
  await expect(typed(page, 'bare')).toHaveText('2.25');
  await expect(value(page, 'bare').locator('b')).toHaveText('2.2500\u00a0in');
});

test('a reference temperature that cannot be read is refused where it is typed, and a bare one gets its unit', async ({
  page,
}) => {
  await bringIn(page, sheet());
  const reference = page.getByRole('textbox', { name: 'Reference temperature' });
  await reference.fill('warm');
  await reference.press('Enter');
  await expect(reference).toHaveAccessibleDescription(/warm/);
  await expect(reference).toHaveValue('warm');
  await reference.fill('68');
  await reference.press('Enter');
  await expect(reference).toHaveValue('68 degF');
  await expect(reference).toHaveAccessibleDescription('');
});
