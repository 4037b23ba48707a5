import { expect, test } from './fixture.ts';
import { begin, line, templateFile } from './sheet-steps.ts';

const filled = templateFile('jobs/saw-arbor-bush.json').title.title;

test('an entry takes the keys of any text field, and Enter ends it', async ({ page }) => {
  await begin(page, filled);
  const entry = line(page, 'bush_bore').locator('[data-column="entry"]');
  await entry.click();
  const text = entry.locator('.cm-content');
  await expect(text).toBeFocused();
  const press = async (...keys: string[]) => {
    for (const key of keys) await page.keyboard.press(key);
  };
  await press('ControlOrMeta+a');
  await page.keyboard.type('1.7 in');
  await press('Control+Backspace');
  await page.keyboard.type('mm');
  await expect(text).toHaveText('1.7 mm');
  await press('Home', 'Delete');
  await page.keyboard.type('44');
  await expect(text).toHaveText('44.7 mm');
  await press('Control+ArrowRight', 'Shift+End', 'Backspace', 'ControlOrMeta+z');
  await expect(text).toHaveText('44.7 mm');
  // Blanks at the front go one by one.
  await press('Home');
  await page.keyboard.type('   ');
  await press('Backspace', 'Backspace', 'Backspace');
  await expect(text).toHaveText('44.7 mm');
  await press('End', 'Shift+Home');
  await page.keyboard.type('= journal');
  await press('Shift+Enter');
  await page.keyboard.type('+ 0.003 in');
  await expect(text.locator('.cm-line')).toHaveText(['= journal', '+ 0.003 in']);
  // Word by word, line by line, and to both ends.
  await press(
    'ArrowUp',
    'Home',
    'Control+Delete',
    'ControlOrMeta+z',
    'ControlOrMeta+Home',
    'ControlOrMeta+End',
  );
  await press('Shift+ArrowLeft', 'Shift+ArrowLeft', 'Delete');
  await page.keyboard.type('in');
  await press('ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown');
  await press('Enter');
  await expect(text).toHaveCount(0);
  await expect(entry.locator('.typed')).toHaveText(/^= journal\s\+ 0\.003 in$/);
});
