import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { nodeIo } from '../../src/command/node-io.ts';
import { run } from '../../src/command/run.ts';
import { buildCommand } from '../../src/setup/command-build.mjs';
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
    'The file has 21.0 MB; a sheet has at most 20 MB',
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
    err: expect.stringContaining('more than 80 MB'),
  });
});

describe('the program itself', () => {
  const built = mkdtempSync(join(tmpdir(), 'fitwright-built-'));
  const program = join(built, 'fitwright.js');
  beforeAll(() => buildCommand(built), 120_000);
  afterAll(() => rmSync(built, { recursive: true }));
  const fitwright = (argv: string[], options: { input?: string; stdout?: number } = {}) =>
    spawnSync(process.execPath, [program, ...argv], {
      encoding: 'utf8',
      input: options.input,
      stdio: ['pipe', options.stdout ?? 'pipe', 'pipe'],
    });
  const job = () => JSON.stringify(clearanceSheet());

  it('reads standard input where the file is called -', () => {
    expect(fitwright(['check', '-'], { input: job() })).toMatchObject({ status: 0, stderr: '' });
    expect(fitwright(['check', '-'], { input: '{' }).status).toBe(2);
  });

  it.runIf(existsSync('/dev/full'))('ends with 2 where what it prints cannot be written', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = fitwright(['check', '-'], { input: job(), stdout: full });
    closeSync(full);
    expect(stderr).toContain('could not be written');
    expect(status).toBe(2);
  });

  it('prints no sign of a file that a terminal acts on, as text and as JSON', () => {
    const sheet = clearanceSheet();
    const label = 'Bore\u001b[1A\u001b[2K\r proven in\u009b2J\u202e';
    const input = JSON.stringify({ ...sheet, cells: sheet.cells.map((cell) => ({ ...cell, label })) });
    for (const more of [[], ['--json']]) {
      const { stdout, stderr } = fitwright(['check', '-', ...more], { input });
      expect(stdout.length).toBeGreaterThan(100);
      expect(`${stdout}${stderr}`.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
    }
    const { stdout } = fitwright(['check', '-', '--json'], { input });
    expect(() => JSON.parse(stdout) as unknown).not.toThrow();
  });

  it('does not end with 0 where it passed over a field that might bear on a verdict', () => {
    const sheet = clearanceSheet();
    const [first, ...rest] = sheet.cells;
    const way = { ...sheet, cells: [{ ...first, manner: 'by comparison' }, ...rest] };
    const passed = fitwright(['check', '-'], { input: JSON.stringify(way) });
    expect(passed).toMatchObject({ status: 1, stderr: expect.stringContaining('cells[0].manner') });
    const needs = { ...sheet, needs: ['comparison'] };
    expect(fitwright(['check', '-'], { input: JSON.stringify(needs) }).status).toBe(2);
    const role = { ...sheet, cells: [{ ...first, role: 'guessed' }, ...rest] };
    expect(fitwright(['check', '-'], { input: JSON.stringify(role) }).status).toBe(2);
  });
});
