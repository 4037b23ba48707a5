import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type Browser, chromium } from '@playwright/test';
import { browserArguments, findBrowser } from '../../src/setup/browser.mjs';

const found = JSON.parse(process.env.FITWRIGHT_BROWSER ?? 'null') ?? findBrowser();

export interface OwnBrowser {
  browser: Browser;
  process: ChildProcess;
}

/** A browser of a test's own, with its profile in `folder`, whose process the test can end. */
export async function ownBrowser(folder: string): Promise<OwnBrowser> {
  const child = spawn(
    found.path,
    [
      ...browserArguments,
      '--headless',
      '--remote-debugging-port=0',
      `--user-data-dir=${folder}`,
      'about:blank',
    ],
    // A group of its own: on some systems the program is a script that starts the browser.
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, ...found.env } },
  );
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stderr!.on('data', (text: Buffer) => {
      said += text;
      const heard = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (heard) resolve(heard);
    });
    child.once('exit', (code) => reject(new Error(`The browser ended with ${code}: ${said}`)));
  });
  return { browser: await chromium.connectOverCDP(address), process: child };
}

/** Ends its process as a power cut would: it can put nothing in order first. */
export async function kill({ process: child }: OwnBrowser): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = once(child, 'exit');
  if (process.platform === 'win32') child.kill('SIGKILL');
  else process.kill(-child.pid!, 'SIGKILL');
  await gone;
}
