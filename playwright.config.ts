import { availableParallelism } from 'node:os';
import { defineConfig } from '@playwright/test';
import { type Browser, browserArguments, findBrowser } from './src/setup/browser.mjs';

// Workers read this file again: the browser is looked for once and handed on.
process.env.FITWRIGHT_BROWSER ??= JSON.stringify(findBrowser());
const browser = JSON.parse(process.env.FITWRIGHT_BROWSER) as Browser | null;
if (!browser)
  throw new Error('No Chromium found: `npm test` finds or installs one, or set CHROMIUM to its path.');

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: 'test-results',
  globalSetup: './tests/browser/build-shop.ts',
  // One to a core: with two the cores are no busier, and each test takes twice as long.
  workers: availableParallelism(),
  fullyParallel: true,
  retries: 0,
  // Nothing here is a test of speed: a busy machine may take its time.
  timeout: 180_000,
  expect: { timeout: 30_000 },
  forbidOnly: Boolean(process.env.CI),
  reporter: 'list',
  use: {
    // The port is whichever was free; Playwright reads it from the server's own line.
    baseURL: `http://127.0.0.1:${process.env.FITWRIGHT_PORT}/`,
    // A test that is not about being offline has no use for all files of the page being fetched and kept.
    serviceWorkers: 'block',
    locale: 'en-GB',
    timezoneId: 'UTC',
    viewport: { width: 1280, height: 800 },
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: browser.path,
      args: browserArguments,
      env: { ...(process.env as Record<string, string>), ...browser.env },
    },
  },
  webServer: {
    command: 'node src/setup/start.mjs',
    env: { PORT: '0' },
    wait: { stdout: /open at http:\/\/127\.0\.0\.1:(?<fitwright_port>\d+)\// },
    timeout: 120_000,
    gracefulShutdown: { signal: 'SIGTERM', timeout: 2000 },
  },
});
