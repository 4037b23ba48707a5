/** How many tests passed and how many did not. @typedef {{ passed: number, failed: number }} Counts */

/**
 * Counts of Vitest's JSON report. A file that could not be loaded holds no test and counts as one failure.
 * @param {{ numPassedTests: number, numFailedTests: number, testResults: { status: string, assertionResults: { status: string }[] }[] }} report
 * @returns {Counts}
 */
export function countsOfVitest(report) {
  const unloaded = report.testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  );
  return { passed: report.numPassedTests, failed: report.numFailedTests + unloaded.length };
}

/**
 * Counts of Playwright's JSON report. Errors outside a test (a page server that does not start) count as failures.
 * @param {{ stats: { expected: number, unexpected: number, flaky: number }, errors: unknown[] }} report
 * @returns {Counts}
 */
export const countsOfPlaywright = ({ stats, errors }) => ({
  passed: stats.expected,
  failed: stats.unexpected + stats.flaky + errors.length,
});

/**
 * A runner that stopped with an error has failed, whatever its report says; so has one in which nothing ran.
 * @param {Counts | null} counts null where there is no report
 * @param {number | null} exitCode
 * @returns {Counts}
 */
export function judged(counts, exitCode) {
  const { passed, failed } = counts ?? { passed: 0, failed: 0 };
  const bad = exitCode !== 0 || passed + failed === 0;
  return { passed, failed: bad && failed === 0 ? 1 : failed };
}
