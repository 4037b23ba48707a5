import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { benchTable, withTable } from '../../src/setup/bench-table.mjs';
import { inRepository } from '../../src/setup/root.mjs';

test('the measured figures in the guide are those of the last run (npm run bench:table writes them)', () => {
  const guide = readFileSync(inRepository('README.md'), 'utf8');
  const results = JSON.parse(readFileSync(inRepository('tests/bench/results.json'), 'utf8'));
  expect(withTable(guide, benchTable(results))).toBe(guide);
});
