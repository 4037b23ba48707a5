// `npm run fuzz`: the seeded inputs of tests/fuzz, a hundred thousand to each reader; another number as an argument.
import { spawnSync } from 'node:child_process';
import { inRepository } from './root.mjs';

const asked = process.argv[2] ?? '100000';
const inputs = Number(asked);
if (!Number.isInteger(inputs) || inputs < 1) {
  console.error(`"${asked}" is no number of inputs: give a whole number, such as npm run fuzz -- 100000.`);
  process.exit(1);
}
const { status } = spawnSync(
  process.execPath,
  // Reports are for people to read as they come, so each file runs by itself.
  [inRepository('node_modules/vitest/vitest.mjs'), 'run', 'tests/fuzz', '--testTimeout=3600000'],
  {
    cwd: inRepository('.'),
    stdio: 'inherit',
    env: { ...process.env, FITWRIGHT_FUZZ: String(inputs) },
  },
);
process.exitCode = status ?? 1;
