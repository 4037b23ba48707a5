// Runs before `npm start` and `npm test`, possibly with no node_modules: only Node's own modules here.
import { spawnSync } from 'node:child_process';
import { NODE_WANTED, nodeFits } from './node-version.mjs';
import { inRepository } from './root.mjs';
import { installIsCurrent, stampInstall } from './stamp.mjs';

if (!nodeFits(process.versions.node)) {
  console.error(`Fitwright needs Node ${NODE_WANTED}; this is ${process.versions.node}.`);
  process.exit(1);
}

if (!installIsCurrent()) {
  console.log('Installing the packages of package-lock.json ...');
  const npm = process.env.npm_execpath;
  /** @type {import('node:child_process').SpawnSyncOptions} */
  const options = { cwd: inRepository('.'), stdio: ['ignore', 'inherit', 'inherit'] };
  const run = npm
    ? spawnSync(process.execPath, [npm, 'ci', '--include=dev'], options)
    : spawnSync('npm', ['ci', '--include=dev'], { ...options, shell: process.platform === 'win32' });
  if (run.status !== 0) {
    console.error('npm ci failed: see its message above. Nothing was started.');
    process.exit(1);
  }
  stampInstall();
}

if (process.argv.includes('--browser')) {
  const { ensureBrowser } = await import('./browser-install.mjs');
  const problem = ensureBrowser();
  if (problem) {
    console.error(problem);
    process.exit(1);
  }
}

if (process.argv.includes('--services')) {
  const { ensureServices } = await import('./services.mjs');
  const problem = ensureServices();
  if (problem) {
    console.error(problem);
    // Whoever tests a change leaves nothing out.
    if (process.env.CI) process.exit(1);
  }
}
