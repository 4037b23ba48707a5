import { expect, test } from './fixture.ts';
import { lookAt, shortJob, takeOver } from './share-steps.ts';
import { figuresAreIn, line, value } from './sheet-steps.ts';

test('keys struck right behind Enter, before the figures are in, go to the page as it is after the entry', async ({
  page,
}) => {
  await lookAt(page, shortJob(), 'sheet.json');
  await takeOver(page);
  await figuresAreIn(page);
  const entry = line(page, 'bore').locator('[data-column="entry"]');
  await entry.click();
  await expect(page.locator('.cm-content')).toBeFocused();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText('2.3000 in ± 0.0002 in');
  // All in one task of the page: the engine cannot have answered between them.
  await page.evaluate(() => {
    const deepest = (): Element => {
      let element = document.activeElement as Element;
      while (element.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
      return element;
    };
    for (const key of ['Enter', 'ArrowRight'])
      deepest().dispatchEvent(
        new KeyboardEvent('keydown', {
          key,
          code: key,
          keyCode: key === 'Enter' ? 13 : 39,
          bubbles: true,
          composed: true,
          cancelable: true,
        }),
      );
  });
  await expect(line(page, 'bore').locator('[data-column="value"]')).toBeFocused();
  await expect(page.locator('.cm-content')).toHaveCount(0);
  await expect(entry).toContainText('2.3000 in ± 0.0002 in');
  await expect(value(page, 'bore')).toContainText('2.3000');
});
