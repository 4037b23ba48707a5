// `npm run prove`: the long walks and long random runs of which `npm test` goes a sample. An argument takes only the test
// files whose path contains it: npm run prove -- killed; a second one only the tests whose title contains it:
// npm run prove -- aimed "touch at 390"
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { inRepository } from './root.mjs';

const wanted = process.argv[2] ?? '';
const titles = process.argv[3];

/** Test files that go further when asked to: those under `tests/prove` and those that import `tests/walk.ts`. */
const files = readdirSync(inRepository('tests'), { recursive: true, encoding: 'utf8' })
  .map((name) => `tests/${name.replaceAll('\\', '/')}`)
  .filter((path) => /\.(test|spec)\.ts$/.test(path) && path.includes(wanted))
  .filter(
    (path) =>
      path.startsWith('tests/prove/') ||
      /from '[./]*\/walk\.ts'/.test(readFileSync(inRepository(path), 'utf8')),
  );
const units = files.filter((path) => path.endsWith('.test.ts'));
const browser = files.filter((path) => path.endsWith('.spec.ts'));

/** @param {string} script @param {string[]} args @param {Record<string, string>} [env] */
function run(script, args, env = {}) {
  console.log(
    `\n${Object.entries(env)
      .map(([name, value]) => `${name}=${value} `)
      .join('')}${args.join(' ')}`,
  );
  const { status } = spawnSync(process.execPath, [inRepository(`node_modules/${script}`), ...args], {
    cwd: inRepository('.'),
    stdio: 'inherit',
    env: { ...process.env, FITWRIGHT_PROVE: '1', ...env },
  });
  if (status !== 0) process.exitCode = 1;
}

const playwright = '@playwright/test/cli.js';
if (units.length > 0)
  run('vitest/vitest.mjs', ['run', ...units, '--testTimeout=3600000', ...(titles ? ['-t', titles] : [])]);
if (browser.length > 0) run(playwright, ['test', ...browser, ...(titles ? ['-g', titles] : [])]);
// Whatever waits for a file of the page must do so however late it comes.
const late = ['kinds-on-use', 'offline'].filter((name) => name.includes(wanted) || 'late'.includes(wanted));
if (late.length > 0)
  for (const delay of ['0', '30', '150', '600'])
    run(playwright, ['test', ...late.map((name) => `tests/browser/${name}.spec.ts`), '--repeat-each=5'], {
      FITWRIGHT_LATE: delay,
    });
if (units.length + browser.length + late.length === 0) {
  console.error(`No test file that goes further has "${wanted}" in its path.`);
  process.exitCode = 1;
}
