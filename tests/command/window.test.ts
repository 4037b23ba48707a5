import { describe, expect, it } from 'vitest';
import { clearanceSheet, fitwright } from './shop.ts';

const INCH = 0.0254;
const files = { 'job.json': clearanceSheet() };
const window = (...more: string[]) => fitwright(['window', 'job.json', ...more], files);

describe('window', () => {
  it('tells how far an input may go, what closes it and on which side metal is still on', async () => {
    const { exit, out, err } = await window('--of', 'bush_outside');
    expect(err).toBe('');
    expect(exit).toBe(0);
    // 2.2510 to 2.2525 in by its limits, and cut to +0.0005 -0.
    expect(out.split('\n').slice(0, 7)).toEqual([
      'job.json: Countershaft, clearance',
      '  bush_outside may be 2.25100 in to 2.25200 in; now 2.25150 in',
      '  Below 2.25100 in, where metal is gone, no longer:',
      '    bush_outside (Bush outside diameter): may miss at the lower limit, metal gone',
      '  Above 2.25200 in, where metal is still on, no longer:',
      '    bush_outside (Bush outside diameter): may miss at the upper limit, metal on',
      '  Looked through from 2.25025 in to 2.25325 in; one check holds at either end.',
    ]);
  });

  it('gives the same as JSON, in SI', async () => {
    const { exit, out } = await window('--of', 'bush_outside', '--json');
    expect(exit).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      of: 'bush_outside',
      window: {
        low: expect.closeTo(2.251 * INCH, 12),
        lowClosedBy: [{ check: 'bush_outside', as: 'as-new' }],
        high: expect.closeTo(2.252 * INCH, 12),
      },
      metalOn: 'high',
      elsewhere: [],
    });
  });

  it('names another piece where the present value is in none, and ends with 1 where there is none', async () => {
    const out = await window('--of', 'bush_outside', '--set', 'bush_outside=2.30 in');
    expect(out.exit).toBe(0);
    expect(out.out).toContain('bush_outside is 2.30000 in, where not every check below it holds; it may be:');
    expect(out.out).toContain('2.25100 in to 2.25200 in');
    const none = await window('--of', 'bush_outside', '--between', '2.26 in .. 2.27 in');
    expect(none.exit).toBe(1);
    expect(none.out).toContain(
      'From 2.26 in to 2.27 in no value of "bush_outside" has all its checks hold at once.',
    );
  });

  it('says what has no window, and why', async () => {
    const misuse = async (args: string[], words: RegExp) => {
      const { exit, err } = await fitwright(args, files);
      expect(exit).toBe(2);
      expect(err).toMatch(words);
    };
    await misuse(['window', 'job.json'], /needs to be told of which input/);
    await misuse(['window', '--of', 'bore'], /window needs a file/);
    await misuse(['window', 'job.json', '--of', 'nothing'], /no cell of that name. It has: bore, journal/);
    await misuse(['window', 'job.json', '--of', 'bore'], /was read off the part/);
    await misuse(['window', 'job.json', '--of', 'clearance'], /is worked out from other lines/);
    await misuse(['window', 'job.json', '--of', 'bore.least'], /is a plain cell and has no input "least"/);
    await misuse(['window', 'job.json', '--of', 'bush_outside', '--between', 'so'], /write two values/);
    const given = (more: object) => ({
      'job.json': clearanceSheet([
        { id: 'x', role: 'given', name: 'x', quantity: 'length', entry: '1 in', ...more },
      ]),
    });
    const idle = await fitwright(['window', 'job.json', '--of', 'x'], given({}));
    expect([idle.exit, idle.out]).toEqual([1, expect.stringContaining('No check depends on "x"')]);
    for (const [more, words] of [
      [{ locked: true }, /is locked by its author/],
      [{ issued: '1 in' }, /has been released to cut/],
      [{ measured: { entry: '1 in' } }, /has been measured/],
    ] as const) {
      const { exit, err } = await fitwright(['window', 'job.json', '--of', 'x'], given(more));
      expect([exit, err]).toEqual([2, expect.stringMatching(words)]);
    }
  });
});
