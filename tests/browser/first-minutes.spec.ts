import type { Page } from '@playwright/test';
import type { Limits } from '../../shared/sheet/format.ts';
import { findings } from './axe-findings.ts';
import { expect, test } from './fixture.ts';
import { begin, check, enter, figuresAreIn, line, templateFile, value } from './sheet-steps.ts';

const template = templateFile('bush-in-opened-out-bore.json');
const cells = new Map(template.cells.map((cell) => [cell.id, cell]));
/** Whatever the template asks for, with its example. */
const asked = new Map<string, string>(
  template.cells.flatMap(({ id, example, examples, limits, outputs }) => {
    const limitsOf = (path: string, of: Limits | undefined) =>
      (['lower', 'upper', 'wear'] as const).flatMap((which) => {
        const text = of?.[`${which}Example`];
        return text === undefined ? [] : [[`${id} ${path}.${which}`, text] as const];
      });
    return [
      ...(example ? [[`${id} entry`, example] as const] : []),
      ...Object.entries(examples ?? {}).map(([input, text]) => [`${id} inputs.${input}`, text] as const),
      ...limitsOf('limits', limits),
      ...Object.entries(outputs ?? {}).flatMap(([name, of]) => limitsOf(`outputs.${name}.limits`, of.limits)),
    ];
  }),
);
const standing = (page: Page) => page.getByRole('region', { name: 'How the checks stand' });

test('an empty template says what it asks for, and leads from entry to entry until nothing waits', async ({
  page,
}) => {
  await begin(page, template.title.title);
  await expect(standing(page)).toContainText(/\d+ entries to make/);
  const journal = line(page, 'journal');
  const entry = journal.locator('[data-column="entry"]');
  // An example is shown and described, and is no value.
  await expect(entry).toContainText(`e.g. ${cells.get('journal')!.example}`);
  await expect(entry).toHaveAttribute('aria-description', /^for example 1\.7480; .*\| between places/);
  await expect(value(page, 'journal')).toHaveText('');
  await expect(journal).toContainText('Two directions at three places');
  await expect(
    page.locator('[data-row]').filter({ hasText: 'uncertainty on your certificate' }).first(),
  ).not.toContainText('may stay blank');

  const seen = new Set<string>();
  await page.keyboard.press('F8');
  for (;;) {
    const focused = page.locator('.cm-content:focus, [data-column="entry"] select:focus');
    await expect(focused).toHaveCount(1);
    const row = page.locator('[data-row], [role="row"][data-cell]').filter({ has: focused }).last();
    const id = (await row.getAttribute('data-cell'))!;
    const field = await focused.evaluate(
      (element) =>
        (element.getRootNode() as ShadowRoot).host?.closest<HTMLElement>('[data-field]')?.dataset.field,
    );
    const input = /\/in\/(.+)$/.exec((await row.getAttribute('data-row')) ?? '')?.[1];
    const key = `${id} ${field ?? (input ? `inputs.${input}` : 'entry')}`;
    if (seen.has(key)) break;
    seen.add(key);
    const text = asked.get(key) ?? '';
    if ((await focused.evaluate((element) => element.tagName)) === 'SELECT') await focused.selectOption(text);
    else {
      await page.keyboard.insertText(text);
      await page.keyboard.press('Enter');
      await expect(page.locator('.cm-content')).toHaveCount(0);
    }
    // One way leads on: at the foot while an entry must be made, above the lines once the rest may be.
    const ways = page.getByRole('button', { name: /next entry/i });
    if ((await ways.count()) === 0) break;
    await expect(ways).toHaveCount(1);
    await ways.click();
  }
  // Every reading, limit, gauge, metal and input that was left open, and no other.
  expect([...seen].sort()).toEqual([...asked.keys()].sort());
  await expect(standing(page)).not.toContainText('wait');
  await expect(standing(page)).not.toContainText('to make');
});

test('a note is read first and edited on request', async ({ page }) => {
  await begin(page, template.title.title);
  await line(page, 'journal').locator('.label').click();
  await expect(page.getByText('Two directions at three places')).toHaveCount(1);
  const note = page.getByRole('grid').getByRole('textbox', { name: 'Note', exact: true });
  await expect(note).toHaveCount(0);
  await page.getByRole('button', { name: 'Edit the note' }).click();
  await expect(note).toBeFocused();
  await note.fill('Wipe it first.');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText('Wipe it first.')).toBeVisible();
});

test('both systems stand side by side at a switch, and no value moves', async ({ page }) => {
  await begin(page, template.title.title);
  await enter(page, 'bush_bore', '1.7510 in');
  await expect(value(page, 'bush_bore')).toContainText('1.7510\u00a0in');
  await page.getByRole('button', { name: 'both', exact: true }).click();
  // 1.7510 in x 25.4 = 44.4754 mm.
  await expect(value(page, 'bush_bore')).toContainText('44.475\u00a0mm');
  await expect(value(page, 'bush_bore').locator('b')).toHaveText('1.7510\u00a0in');
  expect(await findings(page)).toEqual([]);
});

test('on a phone a template to begin with stands on the first screen, and the other ways in behind one button', async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/');
  await expect(page.getByRole('heading', { name: 'What is worn?' })).toBeInViewport();
  await expect(page.getByRole('button', { name: 'Begin this job' }).first()).toBeInViewport();
  const empty = page.getByRole('button', { name: 'Empty sheet, mm' });
  await expect(empty).toHaveCount(0);
  const ways = page.getByRole('button', { name: 'Open a file and more' });
  await expect(ways).toHaveAttribute('aria-expanded', 'false');
  await ways.click();
  await expect(empty).toBeVisible();
  expect(await findings(page)).toEqual([]);
  // Nor does a job with its marks widen the page.
  await page.getByRole('button', { name: 'Begin this job' }).first().click();
  await figuresAreIn(page);
  await page.goto('/#/');
  await expect(page.locator('.mark-row')).toBeVisible();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
});

test('templates stand under what they repair, and one press leaves those of one repair', async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto('/');
  const begins = page.getByRole('button', { name: 'Begin this job' });
  await expect(page.getByRole('heading', { name: 'What is worn?' })).toBeVisible();
  await expect(begins.first()).toBeVisible();
  const all = await begins.count();
  await page.getByRole('button', { name: 'Gears', exact: true }).click();
  await expect(page.getByRole('heading', { level: 4 })).toHaveText([
    'End float by thrust width and shims',
    'Gear centres bored back',
    'Gear pressed on, proven by its ram trace',
    // Listed with the bushes, and found here too.
    'Line-bored housing realigned',
  ]);
  await expect(begins.first()).toBeInViewport();
  expect(await findings(page)).toEqual([]);
  await page.getByRole('button', { name: `Show all ${all}` }).click();
  await expect(begins).toHaveCount(all);
  // The focus is not lost with the button, but stands where the long list begins.
  await expect(page.getByRole('button', { name: 'Bushes' })).toBeFocused();
});

test('a filled job is offered first, and opened as a copy', async ({ page }) => {
  const filled = templateFile('jobs/saw-arbor-bush.json');
  await page.goto('/');
  await expect(page.getByRole('heading', { level: 2 }).first()).toHaveText('A filled job to look at');
  await begin(page, filled.title.title);
  await figuresAreIn(page);
  await expect(check(page, 'bush_outside')).toContainText('proven in limits');
  await expect(standing(page)).not.toContainText('to make');
});

test('a job that is left at once stands in the list with its checks as they were then', async ({ page }) => {
  const filled = templateFile('jobs/saw-arbor-bush.json');
  await page.goto('/');
  await begin(page, filled.title.title);
  await figuresAreIn(page);
  await enter(page, 'journal', '1.7471; 1.7470 | 1.7471; 1.7470 in');
  // Of two ways the other was taken: this one counted no more until it is.
  await expect(check(page, 'clearance_before')).toBeEmpty();
  await standing(page).getByLabel('bush cut').selectOption('finished before pressing');
  await expect(check(page, 'clearance_before')).toContainText('may miss');
  await expect(line(page, 'pressed_bore')).toContainText('set aside: finished before pressing is taken');
  const open = /Proven in limits: \d+ of \d+.* Open: .*before pressing: running clearance .* against /;
  await expect(standing(page)).toContainText(open);
  await page.getByRole('link', { name: 'All jobs' }).first().click();
  await expect(page.locator('.job .job-checks').first()).toContainText(open);
});
