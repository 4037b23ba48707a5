import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * A Chromium the browser tests can start.
 * @typedef {{ path: string, env: Record<string, string> }} Browser `env`: what it needs on top of the environment
 */

/** Where a Chromium of our own is unpacked: not the shared temporary folder, where others could put a file. */
export const ownBrowserFolder = join(
  process.env.XDG_CACHE_HOME || join(homedir(), '.cache'),
  'fitwright',
  'chromium-143.0.4',
);

/** Describes the unpacked Chromium; written last, so its presence says that the unpacking was completed. */
export const ownBrowserFile = join(ownBrowserFolder, 'browser.json');

const names = [
  'chromium-headless-shell',
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
];

const places = [
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ...[process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA].flatMap((base) =>
    base
      ? [`${base}\\Chromium\\Application\\chrome.exe`, `${base}\\Google\\Chrome\\Application\\chrome.exe`]
      : [],
  ),
];

/** The full path of a program on PATH, or null. @param {string} name */
function onPath(name) {
  for (const folder of (process.env.PATH ?? '').split(process.platform === 'win32' ? ';' : ':')) {
    if (folder && existsSync(join(folder, name))) return join(folder, name);
  }
  return null;
}

/**
 * Whether a program starts as a browser. Some systems ship only a stub under the name, so it is asked its version.
 * @param {Browser} browser
 */
export function starts({ path, env }) {
  if (!existsSync(path)) return false;
  // On Windows the question would open a window.
  if (process.platform === 'win32') return true;
  const run = spawnSync(path, ['--version'], {
    encoding: 'utf8',
    timeout: 30_000,
    env: { ...process.env, ...env },
    stdio: ['ignore', 'pipe', 'ignore'],
  });
  return run.status === 0 && /\d+\.\d+\.\d+/.test(run.stdout);
}

/** The first Chromium that starts, or null. @returns {Browser | null} */
export function findBrowser() {
  const asked = process.env.CHROMIUM;
  if (asked) {
    const browser = { path: asked, env: {} };
    if (starts(browser)) return browser;
    console.warn(`CHROMIUM names ${asked}, which does not start as a browser: looking for another one.`);
  }
  for (const path of [...names.map(onPath), ...places]) {
    const browser = path ? { path, env: {} } : null;
    if (browser && starts(browser)) return browser;
  }
  if (existsSync(ownBrowserFile)) {
    const browser = /** @type {Browser} */ (JSON.parse(readFileSync(ownBrowserFile, 'utf8')));
    if (starts(browser)) return browser;
  }
  return null;
}

/** The options every browser is started with: no sandbox (tests run as root in CI), and no traffic of its own. */
export const browserArguments = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
