import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { nodeIo } from '../../src/command/node-io.ts';
import { run } from '../../src/command/run.ts';
import { clearanceSheet } from './shop.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'fitwright-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const checked = async (path: string) => {
  let out = '';
  let err = '';
  const exit = await run(['check', path], {
    ...nodeIo,
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
  });
  return { exit, out, err };
};

it('reads a file from the disk, with or without a byte order mark', async () => {
  for (const mark of ['', '\ufeff']) {
    const path = join(folder, 'job.json');
    writeFileSync(path, mark + JSON.stringify(clearanceSheet()));
    expect(await checked(path)).toMatchObject({ exit: 0, err: '' });
  }
});

it.each([
  ['a folder', () => folder, 'it is a folder: name the files in it'],
  ['a file that is not there', () => join(folder, 'gone.json'), 'there is no such file'],
  [
    'a picture',
    () => {
      const path = join(folder, 'picture.json');
      writeFileSync(path, Buffer.from([0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe, 0x00]));
      return path;
    },
    'it is not UTF-8 text',
  ],
  [
    'a file far too large',
    () => {
      const path = join(folder, 'large.json');
      writeFileSync(path, Buffer.alloc(21_000_000, ' '));
      return path;
    },
    'it has more than 20 MB; a sheet has at most 5 MB',
  ],
])('%s: says so and ends with 2', async (_, path, words) => {
  const { exit, out, err } = await checked(path());
  expect(exit).toBe(2);
  expect(out).toBe('');
  expect(err).toContain(words);
});

it.runIf(existsSync('/dev/zero'))('reads of a device without end no more than a sheet may have', async () => {
  expect(await checked('/dev/zero')).toMatchObject({
    exit: 2,
    out: '',
    err: expect.stringContaining('more than 20 MB'),
  });
});
