import { expect, test as plain } from '@playwright/test';

/** What went wrong on the pages of a test, in the order it was seen. */
type Complaints = string[];

interface Watch {
  /** Empty unless a page logged an error, threw, broke the content security policy or crashed: then the test fails. */
  complaints: Complaints;
  /**
   * Says of a complaint that the test provokes it, whenever it comes: a browser reports what it could not fetch in its own
   * time. One that is expected and never comes fails the test too.
   */
  expectComplaint: (pattern: RegExp) => void;
  expected: RegExp[];
}

/**
 * Playwright's test, which fails when any page of its context logs a console error, throws, reports a breach of the
 * content security policy or crashes. Pages of further contexts are watched by handing the context to `watch`.
 */
export const test = plain.extend<
  Watch & { watch: (context: import('@playwright/test').BrowserContext) => Promise<void> }
>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names a fixture needs from this pattern
  expected: async ({}, use) => use([]),
  complaints: async ({ expected }, use) => {
    const complaints: Complaints = [];
    await use(complaints);
    const unexpected = complaints.filter((one) => !expected.some((pattern) => pattern.test(one)));
    expect(unexpected, 'errors reported by the pages').toEqual([]);
    const missing = expected.filter((pattern) => !complaints.some((one) => pattern.test(one)));
    expect(missing.map(String), 'errors the pages should have reported').toEqual([]);
  },
  // The complaints are asked for so that they are judged after the test has said which it expects.
  expectComplaint: async ({ expected, complaints: _complaints }, use) =>
    use((pattern) => void expected.push(pattern)),
  watch: async ({ complaints }, use) => {
    await use(async (context) => {
      context.on('console', (message) => {
        if (message.type() === 'error')
          complaints.push(`console: ${message.text()} (${message.location().url})`);
        const breach = /^fitwright-csp (.*)$/.exec(message.text());
        if (breach) complaints.push(`content security policy: ${breach[1]}`);
      });
      context.on('weberror', (error) =>
        complaints.push(`thrown: ${error.error().stack ?? error.error().message}`),
      );
      context.on('page', (page) => page.on('crash', () => complaints.push(`crashed: ${page.url()}`)));
      await context.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', (event) => {
          console.info(
            `fitwright-csp ${event.violatedDirective} ${event.blockedURI} ${event.sourceFile}:${event.lineNumber}`,
          );
        });
      });
    });
  },
  context: async ({ context, watch }, use) => {
    await watch(context);
    await use(context);
  },
});

export { expect };
