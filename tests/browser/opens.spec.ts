import { expect, test } from './fixture.ts';

test('the page opens without an error under its strict headers', async ({ page }) => {
  const answer = await page.goto('/');
  expect(answer?.headers()['content-security-policy']).toContain("default-src 'none'");
  await expect(page).toHaveTitle(/Fitwright/);
  await expect(page.locator('#page')).not.toBeEmpty();
});

test('a breach of the content security policy is seen by the watch', async ({ page, complaints }) => {
  await page.goto('/');
  await page.evaluate(() => {
    const style = document.createElement('style');
    style.textContent = 'body { color: red }';
    document.head.append(style);
  });
  // Twice: by the browser's own console line and by the event.
  await expect.poll(() => complaints.length).toBe(2);
  expect(complaints.splice(0).filter((text) => text.startsWith('content security policy'))).toHaveLength(1);
});

test('an error thrown on the page is seen by the watch', async ({ page, complaints }) => {
  await page.goto('/');
  await page.evaluate(() =>
    setTimeout(() => {
      throw new Error('a provoked error');
    }),
  );
  await expect.poll(() => complaints.length).toBe(1);
  expect(complaints.splice(0)[0]).toContain('a provoked error');
});
