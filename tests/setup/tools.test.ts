import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { starts } from '../../src/setup/browser.mjs';
import { nodeFits } from '../../src/setup/node-version.mjs';

test.each([
  ['18.20.8', false],
  ['20.18.3', false],
  ['20.19.0', true],
  ['21.7.3', false],
  ['22.11.0', false],
  ['22.12.0', true],
  ['24.0.0', true],
])('whether Node %s fits: %s', (version, fits) => {
  expect(nodeFits(version)).toBe(fits);
});

describe.skipIf(process.platform === 'win32')('a program is taken for a browser', () => {
  let folder: string;
  const program = (name: string, body: string) => {
    const path = join(folder, name);
    writeFileSync(path, `#!/bin/sh\n${body}\n`);
    chmodSync(path, 0o755);
    return { path, env: { TELL: 'Browser 143.0.4' } };
  };
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'fitwright-browser-'));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  test('when it tells its version, in the environment it needs', () => {
    expect(starts(program('good', 'echo "$TELL"'))).toBe(true);
  });

  test('not when it is a stub that only says what to install, breaks, or is not there', () => {
    expect(starts(program('stub', 'echo "Install the package first"'))).toBe(false);
    expect(starts(program('broken', 'echo "Browser 143.0.4"; exit 1'))).toBe(false);
    expect(starts({ path: join(folder, 'gone'), env: {} })).toBe(false);
  });
});
