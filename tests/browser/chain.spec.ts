import { readFile } from 'node:fs/promises';
import { findings } from './axe-findings.ts';
import { expect, test } from './fixture.ts';
import { begin, line, templateFile } from './sheet-steps.ts';

const job = templateFile('jobs/saw-arbor-bush.json');
const drawn = job.cells.filter(
  ({ role, kind }) => role !== 'section' && role !== 'remark' && kind !== 'gauge' && kind !== 'material',
);

test('the chain draws every line with its check, and a press leads to it', async ({ page }) => {
  await begin(page, job.title.title);
  await page.getByRole('link', { name: 'Chain' }).click();
  const nodes = page.locator('.chain-drawing').getByRole('link');
  await expect(nodes).toHaveCount(drawn.length);
  await expect(
    page.getByRole('link', { name: /Bush outside diameter, .*in, proven in limits/ }),
  ).toBeVisible();
  expect(await page.locator('.chain-drawing .edge').count()).toBeGreaterThan(drawn.length / 2);
  await page.getByLabel('with gauges and materials').check();
  await expect(nodes).toHaveCount(
    job.cells.filter(({ role }) => role !== 'section' && role !== 'remark').length,
  );
  expect(await findings(page)).toEqual([]);

  await page.getByRole('link', { name: /Bush outside diameter/ }).press('Enter');
  await expect(line(page, 'bush_outside').locator('[data-column="name"]')).toBeFocused();
  await page.goBack();
  await expect(nodes.first()).toBeVisible();
});

test('a long chain is first seen whole, and in full size on request', async ({ page }) => {
  await begin(page, job.title.title);
  await page.getByRole('link', { name: 'Chain' }).click();
  const room = page.getByRole('region', { name: 'Drawing' });
  const hidden = () => room.evaluate((element) => element.scrollWidth - element.clientWidth);
  await expect(page.locator('.chain-drawing').getByRole('link')).toHaveCount(drawn.length);
  await expect.poll(hidden).toBeLessThanOrEqual(0);
  await page.getByLabel('fit to the window').uncheck();
  await expect.poll(hidden).toBeGreaterThan(0);
});

test('the chain is fitted anew to a window that is drawn larger or smaller', async ({ page }) => {
  await begin(page, job.title.title);
  await page.getByRole('link', { name: 'Chain' }).click();
  const fits = page.getByLabel('fit to the window');
  await expect(fits).toBeChecked();
  await page.setViewportSize({ width: 700, height: 800 });
  await expect(fits).not.toBeChecked();
  await page.setViewportSize({ width: 1280, height: 800 });
  await expect(fits).toBeChecked();
});

test('the chain is saved as a drawing that stands by itself', async ({ page, context }) => {
  await begin(page, job.title.title);
  await page.getByRole('link', { name: 'Chain' }).click();
  const nodes = page.locator('.chain-drawing').getByRole('link');
  await expect(nodes).toHaveCount(drawn.length);
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as SVG' }).click();
  const file = await coming;
  expect(file.suggestedFilename()).toMatch(/\.svg$/);
  const text = await readFile(await file.path(), 'utf8');
  expect(text).toContain('xmlns="http://www.w3.org/2000/svg"');
  expect(text).not.toMatch(/var\(|class=|tabindex/);
  const alone = await context.newPage();
  await alone.setContent(text.replace(/^<\?xml[^>]*>/, ''));
  await expect(alone.locator('svg text', { hasText: '2.2636' })).toHaveAttribute('fill', /rgb/);
  await expect(alone.locator('svg rect').nth(1)).toHaveAttribute('stroke', 'rgb(23, 34, 43)');
  await alone.close();
});

test('a sum or difference shows how its sizes stack up, and says what is left', async ({ page }) => {
  await begin(page, job.title.title);
  await line(page, 'end_float').locator('.label').click();
  const stack = page.locator('.stack-up');
  await expect(stack.getByRole('heading', { name: 'How the sizes stack up' })).toBeVisible();
  await expect(stack).toContainText('6.5\u00a0thou is left; at worst 4.5 to 8.5\u00a0thou.');
  await expect(stack.locator('.bar')).toHaveCount(2);
  await expect(stack.locator('.break')).toHaveCount(1);
  await stack.getByRole('button', { name: 'Bush length, over its faces' }).click();
  await expect(line(page, 'bush_length').locator('[data-column="name"]')).toBeFocused();
});

test('the chain is put on one sheet of paper, lying on its side', async ({ page }) => {
  await begin(page, job.title.title);
  await page.getByRole('link', { name: 'Chain' }).click();
  await expect(page.locator('.chain-drawing').getByRole('link')).toHaveCount(drawn.length);
  const paper = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(paper.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  const [, width, height] = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)/.exec(paper) ?? [];
  expect(Number(width)).toBeGreaterThan(Number(height));
});
