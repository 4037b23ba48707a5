import { describe, expect, it } from 'vitest';
import { clearanceSheet, fitwright } from './shop.ts';

const INCH = 0.0254;
const files = { 'job.json': clearanceSheet() };

describe('check', () => {
  it('prints every cell with value, spread, limits and check, under its heading', async () => {
    const { exit, out, err } = await fitwright(['check', 'job.json'], files);
    expect(err).toBe('');
    expect(exit).toBe(0);
    const lines = out.replaceAll('\u00a0', ' ').split('\n');
    expect(lines[0]).toBe('job.json: Countershaft, clearance');
    expect(lines).toContain('  Sizes');
    const clearance = lines.find((line) => line.includes('Running clearance'));
    expect(clearance).toMatch(
      /^ {2}3 {2}clearance +worked out +3\.0 thou ± 0\.4 thou +2\.0 thou to 4\.0 thou, worn 8\.0 thou +proven in limits as new, where read +Running clearance$/,
    );
    expect(lines[lines.indexOf(clearance as string) + 1]).toMatch(/^ +proven serviceable, where read$/);
    const outside = lines.find((line) => line.includes('Bush outside diameter'));
    expect(outside).toMatch(
      /chosen +2\.2515 in \+0\.0005 -0\.0000 in, aim 2\.2519 in +2\.2510 in to 2\.2525 in +holds/,
    );
    expect(lines.find((line) => line.includes('1  bore'))).toMatch(/1\.7510 in ± 0\.0002 in \(k=2\)/);
    expect(out).toContain(
      'Proven in limits: 1 of 2 (1 where read). Hold as planned: 1.\n  Decided by: worst case\n',
    );
  });

  it('says what of a list is judged, which is not the mean it shows', async () => {
    const limits = { upper: '1.7520 in' };
    const list = { id: 'c9', role: 'measured' as const, name: 'seat', quantity: 'length', limits };
    const sheet = clearanceSheet([{ ...list, entry: '1.7510; 1.7522; 1.7512 in ± 0.0001 in' }]);
    const { out } = await fitwright(['check', 'job.json'], { 'job.json': sheet });
    const lines = out.replaceAll('\u00a0', ' ').split('\n');
    const at = lines.findIndex((line) => line.includes(' seat '));
    // Mean of three by Student's t: 4.303 x 0.000666 in / sqrt(3), dof 2.
    expect(lines[at]).toMatch(
      / {2}1\.7515 in ± 0\.0017 in +not above 1\.7520 in +out of limits at the upper limit, by 0\.0002 in$/,
    );
    expect(lines.join('\n')).toMatch(/ Out: .*greatest 1\.75220 against 1\.7520 in/);
    // What three directions do not show lies outwards only: 0.6 of the out-of-round, beside the ± either way; what is picked by scatter, inwards.
    expect(lines[at + 1]).toMatch(
      /^ +judged by +least 1\.7510 in \+0\.0001 -0\.0008 in \(k=2\), greatest 1\.75220 in \+0\.00082 -0\.00013 in *$/,
    );
  });

  it('says of readings that are no sizes neither what is round nor an end: their mean is judged', async () => {
    const pull = { id: 'c9', role: 'measured' as const, name: 'pull', quantity: 'force' };
    const sheet = clearanceSheet([
      { ...pull, entry: '130.53; 131.0 N ± 0.1 N', limits: { upper: '131.1 N' } },
    ]);
    const { out } = await fitwright(['check', 'job.json'], { 'job.json': sheet });
    expect(out).toContain(' pull ');
    expect(out).not.toMatch(/pull\.out_of_round|judged by +least/);
  });

  it.each([
    ['1.7510 in ± 0.0001 in', 'at one place'],
    ['1.7510; 1.7512 in ± 0.0001 in', 'at one place'],
    ['1.7510 | 1.7512 in ± 0.0001 in', 'in one direction'],
    ['1.7510; 1.7511 | 1.7512; 1.7513 in ± 0.0001 in', undefined],
  ])('says of what alone `%s` tells, where no limits are given', async (entry, where) => {
    const list = { id: 'c9', role: 'measured' as const, name: 'seat', quantity: 'length', entry };
    const files = { 'job.json': clearanceSheet([list]) };
    const { out } = await fitwright(['check', 'job.json'], files);
    const line = out.split('\n').find((one) => one.includes(' seat '));
    expect(/ read (.*?) {2}/.exec(`${line}  `)?.[1]).toBe(where);
    const { out: json } = await fitwright(['check', 'job.json', '--json'], files);
    expect(JSON.parse(json).seat.read).toBe(where);
  });

  it('names the rule that a line goes by in place of the sheet’s', async () => {
    const sheet = clearanceSheet();
    const limits = sheet.cells.find(({ name }) => name === 'clearance')?.limits;
    if (limits) limits.rule = 'simple';
    const { out } = await fitwright(['check', 'job.json'], { 'job.json': sheet });
    expect(out.split('\n').find((line) => line.includes('Running clearance'))).toMatch(
      /proven in limits as new \(with no allowance for measuring error\) +Running/,
    );
    const json = await fitwright(['check', 'job.json', '--json'], { 'job.json': sheet });
    expect(JSON.parse(json.out)).toMatchObject({
      clearance: { rule: 'simple' },
      bush_outside: { rule: 'worst-case' },
    });
    expect(JSON.parse(json.out).bore.rule).toBeUndefined();
  });

  it('keeps columns aligned where values differ in length', async () => {
    const { out } = await fitwright(['check', 'job.json'], files);
    const starts = out
      .split('\n')
      .filter((line) => /^ {2}\d {2}/.test(line))
      .map((line) => line.search(/measured|worked out|chosen/));
    expect(new Set(starts).size).toBe(1);
  });

  it('gives SI figures, spread, limits and check by name as JSON', async () => {
    const { exit, out } = await fitwright(['check', 'job.json', '--json'], files);
    expect(exit).toBe(0);
    const { clearance, bush_outside, 'head line': head } = JSON.parse(out);
    const printed = await fitwright(['check', 'job.json'], files);
    expect(printed.out).toContain(`\n  ${head.words}\n`);
    expect(head).toMatchObject({ checks: 2, proven: 1, code: 'plan-in' });
    expect(clearance.unit).toBe('m');
    expect(clearance.check).toBe('proven in limits, where read');
    expect([clearance.code, clearance.inServiceCode, bush_outside.code]).toEqual([
      'part-in-where-read',
      'part-in-where-read',
      'plan-in',
    ]);
    expect(clearance.inService).toBe('proven in limits');
    // By hand: 1.7510 - 1.7480 in; worst case 0.0004 in; u = sqrt(2) x 0.0001 in; limits as typed.
    expect(clearance.value).toBeCloseTo(0.003 * INCH, 12);
    expect(clearance.low).toBeCloseTo(0.0026 * INCH, 12);
    expect(clearance.high).toBeCloseTo(0.0034 * INCH, 12);
    expect(clearance.u).toBeCloseTo(Math.SQRT2 * 0.0001 * INCH, 12);
    expect(clearance.lower).toBeCloseTo(0.002 * INCH, 12);
    expect(clearance.wear).toBeCloseTo(0.008 * INCH, 12);
    expect(bush_outside).toMatchObject({ check: 'holds', stands: 'planned', unit: 'm' });
  });

  it.each([
    'head line',
    'c3@.least',
    'c3/least',
    'c3%above-lower',
    'clearance',
    'clearance.least',
    'c3!',
    '%',
    '.',
    '/',
    '@',
  ])('tells a bad clearance as bad beside a line whose id is %s, in words and as JSON', async (id) => {
    const sheet = clearanceSheet([{ id, role: 'given', entry: '3 thou', limits: { lower: '2 thou' } }]);
    const bad = sheet.cells.map((cell) =>
      cell.id === 'c2' ? { ...cell, entry: '1.7508 in ± 0.0002 in' } : cell,
    );
    for (const cells of [bad, bad.toReversed()]) {
      const job = { 'job.json': { ...sheet, cells } };
      const plain = await fitwright(['check', 'job.json'], job);
      expect(plain.exit).toBe(1);
      const line = plain.out.split('\n').find((one) => one.includes('Running clearance'));
      expect(line).toContain('out of limits as new at the lower limit');
      const all = JSON.parse((await fitwright(['check', 'job.json', '--json'], job)).out);
      expect(all.clearance.check).toBe('out of limits');
      expect(Object.keys(all)).toHaveLength(10);
    }
  });

  it('keys several files by their path, an unreadable one as null', async () => {
    const { exit, out, err } = await fitwright(['check', 'job.json', 'gone.json', '--json'], files);
    const all = JSON.parse(out);
    expect(Object.keys(all)).toEqual(['job.json', 'gone.json']);
    expect(all['job.json'].clearance.check).toBe('proven in limits, where read');
    expect(all['gone.json']).toBeNull();
    expect(exit).toBe(2);
    expect(err).toContain('gone.json: cannot be read: there is no such file.');
  });

  it('fills the emptied cells of a template from its examples, and nothing that is filled', async () => {
    const template = clearanceSheet();
    template.template = true;
    const cells = template.cells.map((cell) =>
      cell.name === 'journal'
        ? { ...cell, entry: '', example: '1.7480 in ± 0.0002 in', fill: true }
        : cell.name === 'bore'
          ? { ...cell, example: '9 in' }
          : cell,
    );
    const files = { 't.json': { ...template, cells } };
    const empty = await fitwright(['check', 't.json'], files);
    expect(empty.exit).toBe(1);
    expect(empty.out).toMatch(/2 journal \(Journal\): “Journal” \(journal\) has no reading yet\./);
    expect(empty.out).toContain('waiting');
    const filled = await fitwright(['check', 't.json', '--example'], files);
    expect(filled.exit).toBe(0);
    expect(filled.out).toMatch(/clearance +worked out +3\.0/);
  });
});

describe('exit status', () => {
  const withJournal = (entry: string) => fitwright(['check', 'job.json', '--set', `journal=${entry}`], files);

  it('is 0 near the edge', async () => {
    const { exit, out } = await withJournal('1.7486 in ± 0.0002 in');
    expect(out).toContain('proven in limits as new, near the edge');
    expect(exit).toBe(0);
  });

  it('is 1 where the spread straddles a limit', async () => {
    const { exit, out } = await withJournal('1.7488 in ± 0.0002 in');
    expect(out).toContain('not proven as new');
    expect(exit).toBe(1);
  });

  it('is 1 where a limit is missed, with the side and by how much', async () => {
    const { exit, out } = await withJournal('1.7500 in ± 0.0002 in');
    expect(out.replaceAll('\u00a0', ' ')).toMatch(
      /out of limits as new at the lower limit, metal on, by 1\.0 thou/,
    );
    expect(exit).toBe(1);
  });

  it('is 1 while something waits', async () => {
    const { exit, out } = await withJournal('');
    expect(out).toMatch(/clearance.*waiting/);
    expect(exit).toBe(1);
  });

  it('is 2 for an entry that cannot be read, and the rest is still printed', async () => {
    const { exit, out, err } = await withJournal('1.74 lbf');
    expect(err).toMatch(/^fitwright: job\.json: 2 journal \(Journal\), entry: .*length.*force/);
    expect(out).toMatch(/bush_outside.*holds/);
    expect(exit).toBe(2);
  });
});
