import { describe, expect, test } from 'vitest';
import { countsOfPlaywright, countsOfVitest, judged } from '../../src/setup/counts.mjs';

describe('the closing count of npm test', () => {
  test('a test file that could not be loaded counts as a failure', () => {
    const report = {
      numPassedTests: 3,
      numFailedTests: 1,
      testResults: [
        { status: 'failed', assertionResults: [{ status: 'failed' }, { status: 'passed' }] },
        { status: 'passed', assertionResults: [{ status: 'passed' }, { status: 'passed' }] },
        { status: 'failed', assertionResults: [] },
      ],
    };
    expect(countsOfVitest(report)).toEqual({ passed: 3, failed: 2 });
  });

  test('a flaky browser test and an error outside the tests count as failures', () => {
    const report = { stats: { expected: 4, unexpected: 1, flaky: 1 }, errors: ['the server did not start'] };
    expect(countsOfPlaywright(report)).toEqual({ passed: 4, failed: 3 });
  });

  test.each([
    ['a runner that stopped with an error', { passed: 5, failed: 0 }, 1, { passed: 5, failed: 1 }],
    ['a runner that was ended', { passed: 5, failed: 0 }, null, { passed: 5, failed: 1 }],
    ['a runner without a report', null, 1, { passed: 0, failed: 1 }],
    ['a run of no tests', { passed: 0, failed: 0 }, 0, { passed: 0, failed: 1 }],
    ['failures', { passed: 5, failed: 2 }, 1, { passed: 5, failed: 2 }],
    ['a clean run', { passed: 5, failed: 0 }, 0, { passed: 5, failed: 0 }],
  ])('%s', (_, counts, exitCode, expected) => {
    expect(judged(counts, exitCode)).toEqual(expected);
  });
});
