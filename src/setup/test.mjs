// `npm test`: pure code and outside checks by Vitest, then what a person does by a real Chromium, then one line for both.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { countsOfPlaywright, countsOfVitest, judged } from './counts.mjs';
import { inRepository } from './root.mjs';

const reports = mkdtempSync(join(tmpdir(), 'fitwright-test-'));

/**
 * @template Report
 * @param {{ script: string, args: string[], env?: Record<string, string>, report: string, count: (report: Report) => import('./counts.mjs').Counts }} runner
 */
function run({ script, args, env = {}, report, count }) {
  const { status } = spawnSync(process.execPath, [inRepository(`node_modules/${script}`), ...args], {
    cwd: inRepository('.'),
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  });
  return judged(existsSync(report) ? count(JSON.parse(readFileSync(report, 'utf8'))) : null, status);
}

try {
  const unitReport = join(reports, 'unit.json');
  const unit = run({
    script: 'vitest/vitest.mjs',
    args: ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${unitReport}`],
    report: unitReport,
    count: countsOfVitest,
  });
  const browserReport = join(reports, 'browser.json');
  const browser = run({
    script: '@playwright/test/cli.js',
    args: ['test', '--reporter=list,json'],
    env: { PLAYWRIGHT_JSON_OUTPUT_NAME: browserReport },
    report: browserReport,
    count: countsOfPlaywright,
  });
  const failed = unit.failed + browser.failed;
  console.log(`\n${unit.passed + browser.passed} passed, ${failed} failed`);
  process.exitCode = failed > 0 ? 1 : 0;
} finally {
  rmSync(reports, { recursive: true, force: true });
}
