import { describe, expect, test } from 'vitest';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { clearanceSheet, fitwright, type Run } from './shop.ts';

const wall: CellRecord = {
  id: 'c5',
  role: 'worked',
  name: 'wall',
  quantity: 'length',
  entry: '=(bush_outside - bore) / 2',
};
const files: Record<string, SheetFile> = { 'job.json': clearanceSheet([wall]) };
const workBack = (...argv: string[]): Promise<Run> => fitwright(['work-back', 'job.json', ...argv], files);

describe('work-back', () => {
  // By hand: 1.7510 + 2 x 0.2500 = 2.2510.
  test('tells the entry, what the figure then is, and what a check then says', async () => {
    const { exit, out } = await workBack('--want', 'wall = 0.2500 in', '--change', 'bush_outside');
    expect(exit).toBe(0);
    expect(out).toMatch(/^2\.2510 in: comes to 0\.2500 in\n/);
  });
  test('prints JSON in SI units', async () => {
    const { exit, out } = await workBack('--want', 'wall=.25 in', '--change', 'bush_outside', '--json');
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      solutions: [
        { text: '2.2510 in', value: expect.closeTo(2.251 * 0.0254, 9), figure: expect.closeTo(0.00635, 9) },
      ],
      searched: [expect.any(Number), expect.any(Number)],
    });
  });
  test('lists what may move where nothing is said of it', async () => {
    const { exit, out } = await workBack('--want', 'wall = 0.25 in');
    expect(exit).toBe(0);
    expect(out).toContain('bush_outside');
    expect(out).not.toMatch(/^journal|^bore /m);
  });
  test('ends with 1 and the reason where there is none', async () => {
    const { exit, out, err } = await workBack('--want', 'clearance = 3 thou', '--change', 'bore');
    expect([exit, out]).toEqual([1, '']);
    expect(err).toMatch(/“Bush bore” \(bore\) was read off the part/);
  });
  test.each<[string, string[], RegExp]>([
    ['nothing wanted', ['--change', 'bush_outside'], /needs to be told what is wanted/],
    ['a name that is not there', ['--want', 'walls = 1 in', '--change', 'bore'], /no cell of that name/],
    ['an input that is not there', ['--want', 'wall = 1 in', '--change', 'bush'], /no cell of that name/],
    ['what cannot be read', ['--want', 'wall = about 1', '--change', 'bush_outside'], /\S/],
  ])('ends with 2 for %s', async (_, argv, words) => {
    const { exit, err } = await workBack(...argv);
    expect(exit).toBe(2);
    expect(err).toMatch(words);
  });
});
