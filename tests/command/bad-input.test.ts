import { describe, expect, it } from 'vitest';
import type { CellRecord } from '../../shared/sheet/format.ts';
import { clearanceSheet, fitwright } from './shop.ts';

const worked = (id: string, entry: string): CellRecord => ({ id, role: 'worked', name: id, entry });
const given = (id: string, entry: string, quantity = 'length'): CellRecord => ({
  id,
  role: 'given',
  name: id,
  quantity,
  entry,
});

/** The rest of the sheet must stay live beside the cells that are wrong. */
const checked = async (...cells: CellRecord[]) => {
  const run = await fitwright(['check', 'bad.json'], { 'bad.json': clearanceSheet(cells) });
  expect(run.out).toMatch(/clearance.*proven in limits as new/);
  return run;
};

describe('a file that is no sheet', () => {
  it.each([
    ['damaged', '{"format": "fitwright-sheet", "version": 1, "cel', /damaged.*not JSON/],
    ['of something else', '{"name": "left-pad", "version": "1.0.0"}', /not a job sheet.*"format".*missing/],
    ['empty', '', /empty/],
    ['a bare number', '42', /not a job sheet/],
    ['a list', '[1, 2]', /not a job sheet/],
    ['of a later edition', '{"format":"fitwright-sheet","version":99}', /newer edition/],
    ['nested without end', `${'['.repeat(5000)}${']'.repeat(5000)}`, /levels deep/],
    [
      'without cells',
      '{"format":"fitwright-sheet","version":1,"title":{"title":"x"},"units":{"length":"in"},"rule":"simple"}',
      /cells is missing/,
    ],
  ])('%s: says so and ends with 2', async (_, text, words) => {
    const { exit, out, err } = await fitwright(['check', 'x.json'], { 'x.json': text });
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/^fitwright: x\.json: /);
    expect(err).toMatch(words);
  });
});

describe('a cell that is in error', () => {
  it('wrong unit: names both sides', async () => {
    const { exit, err } = await checked(given('wall', '5 lbf'));
    expect(exit).toBe(2);
    expect(err).toMatch(/5 wall, entry: .*length.*force/);
  });

  it('unknown name: offers the near one', async () => {
    const { exit, err } = await checked(worked('x', '=jurnal * 2'));
    expect(exit).toBe(2);
    expect(err).toMatch(/no cell named “jurnal”.*journal/);
  });

  it('a ring of names: tells it round', async () => {
    const { exit, err } = await checked(worked('p', '=q + 1 in'), worked('q', '=p + 1 in'));
    expect(exit).toBe(2);
    expect(err).toMatch(/p → q → p/);
  });

  it('division by zero: begins where it begins, and what hangs on it waits', async () => {
    const { exit, out, err } = await checked(worked('r', '=1/0'), worked('s', '=r + 1'));
    expect(exit).toBe(2);
    expect(err.match(/Division by zero/g)).toHaveLength(1);
    expect(err).toMatch(/5 r: Division by zero/);
    expect(out).toMatch(/6 {2}s +worked out +— +waiting/);
  });

  it('a length of nothing: waits, and is no error', async () => {
    const { exit, out, err } = await checked(given('length', ''));
    expect(exit).toBe(1);
    expect(err).toBe('');
    expect(out).toMatch(/5 length: “length” is blank/);
  });

  it('1e300: printed as it is; its square is no figure', async () => {
    const { exit, out, err } = await checked(given('far', '1e300 in'), worked('square', '=far * far'));
    expect(exit).toBe(2);
    expect(out).toMatch(/far +given +1×10³⁰⁰/);
    expect(err).toMatch(/6 square: /);
  });

  it('1e300 with its doubt, and a tolerance that cannot be read: JSON has no figure that is none', async () => {
    const cells: CellRecord[] = [
      { id: 'far', role: 'measured', name: 'far', quantity: 'length', entry: '1e300 in' },
      { id: 'cut', role: 'chosen', name: 'cut', quantity: 'length', entry: '2 in', tolerance: 'snug' },
    ];
    const { out } = await fitwright(['check', 'bad.json', '--json'], { 'bad.json': clearanceSheet(cells) });
    const { far, cut } = JSON.parse(out);
    expect(out).not.toMatch(/null,|NaN|Infinity/);
    expect(far.u).toBeGreaterThan(1e296);
    expect(cut).toMatchObject({
      error: expect.stringMatching(/spread is not known yet. The tolerance of .*cut/),
    });
    expect(cut.value).toBeCloseTo(0.0508, 12);
    expect(cut).not.toHaveProperty('low');
  });

  it('100 kB pasted in: one message, not 100 kB of it', async () => {
    const { exit, err } = await checked(given('paste', '1.75 in + '.repeat(10_000)));
    expect(exit).toBe(2);
    expect(err).toMatch(/paste, entry: /);
    expect(err.length).toBeLessThan(1000);
  });

  it('200 nested parentheses: a message', async () => {
    const { exit, err } = await checked(worked('deep', `=${'('.repeat(200)}1${')'.repeat(200)}`));
    expect(exit).toBe(2);
    expect(err).toMatch(/deep, entry: /);
  });

  it('names that are not ASCII work', async () => {
    const { exit, out } = await checked(given('größe', '25.4 mm'), worked('zwölf', '=größe * 12'));
    expect(exit).toBe(0);
    expect(out).toMatch(/zwölf +worked out +12\.0000/);
  });

  it('two tolerances on one size: says which counts', async () => {
    const { exit, out } = await checked({
      ...given('cut', '2 in ± .001'),
      role: 'chosen',
      tolerance: '+.002 -0',
    });
    expect(exit).toBe(0);
    expect(out).toMatch(
      /5 cut: Two tolerances are given: that of the entry counts, and \+\.002 -0 beside it does not/,
    );
  });

  it('a negative diameter: asks whether the minus is meant', async () => {
    const files = { 'a.json': clearanceSheet() };
    const { exit, out } = await fitwright(['check', 'a.json', '--set', 'journal=-1.7480 ± .0002'], files);
    expect(exit).toBe(1);
    expect(out).toMatch(/2 journal \(Journal\), entry: -1\.7480 in .* Is the minus meant\?/);
    expect(out).not.toMatch(/bore .*entry: .*Is /);
  });

  it('a kind this library does not have: kept, and said', async () => {
    const { exit, err } = await checked({ id: 'u', role: 'cell', name: 'u', kind: 'no-such-kind' });
    expect(exit).toBe(2);
    expect(err).toMatch(/no cell of the kind "no-such-kind"/);
  });

  it('a cell named as the workings of objects are: comes out in JSON', async () => {
    const { out } = await fitwright(['check', 'b.json', '--json'], {
      'b.json': clearanceSheet([given('toString', '1 in')]),
    });
    expect(JSON.parse(out).toString.value).toBeCloseTo(0.0254, 12);
  });
});

describe('what a file says that this program does not know, or says falsely', () => {
  it.each([
    [
      'a kind of quantity',
      { ...given('x', '1.748 in ± 0.001 in'), quantity: 'girth', limits: { upper: '2 in' } },
    ],
    ['a later edition of a cell', { id: 'x', role: 'cell', name: 'x', kind: 'gauge', edition: 99 }],
    ['an input', { id: 'x', role: 'cell', name: 'x', kind: 'gauge', inputs: { wear: '1 thou' } }],
    [
      'an output with limits',
      { id: 'x', role: 'cell', name: 'x', kind: 'gauge', outputs: { wear: { limits: { upper: '1 thou' } } } },
    ],
  ] as [string, CellRecord][])('%s: told, and the end is 2', async (_, cell) => {
    const { exit, out, err } = await checked(cell);
    expect(exit).toBe(2);
    expect(err).toMatch(/5 x, .*(called "girth"|edition 99|no (in|out)put "wear")/);
    expect(out).not.toMatch(/ x +.*(proven|holds)/);
  });

  it('a doubt of next to nothing behind a reading: counts as none', async () => {
    const reading: CellRecord = {
      ...given('x', '1.748 in ± 1e-12 in'),
      role: 'measured',
      limits: { upper: '2 in' },
    };
    const { exit, out } = await checked(reading);
    expect(exit).toBe(1);
    expect(out).toMatch(/ x .*not proven/);
    expect(out).toMatch(/a ± of nothing/);
  });

  it('a value of a table that the sheet brings along: told beside the one that is here', async () => {
    const metal: CellRecord = {
      id: 'x',
      role: 'cell',
      name: 'x',
      kind: 'material',
      inputs: { material: 'c93200' },
    };
    const tables = [{ table: 'materials', key: 'c93200', column: 'E', value: 1, low: 1, high: 1 }];
    const run = await fitwright(['check', 'a.json'], { 'a.json': { ...clearanceSheet([metal]), tables } });
    expect(run.out).toMatch(/Young's modulus.*the sheet brings along.*psi; the table here says .*psi/);
  });

  it('line ends in its words: no line of it looks like one of ours', async () => {
    const forged = 'Wall\n  9  wall  measured  1.000 in  proven in limits';
    const cells: CellRecord[] = [
      { id: 's', role: 'section', label: forged },
      { ...given('wall', '3 in'), label: forged, limits: { upper: '1 in' }, way: { to: forged, by: forged } },
      { id: 'k', role: 'cell', kind: forged },
      { ...given('bad', `1 in\n${forged}`), gauge: forged },
    ];
    const file = clearanceSheet(cells);
    const sheet = { ...file, title: { title: forged }, ways: { [forged]: forged }, [forged]: 1 };
    for (const argv of [['check'], ['window', '--of', 'wall'], ['work-back', '--want', 'wall = 1 in']]) {
      const [word = '', ...rest] = argv;
      const { out, err } = await fitwright([word, 'a.json', ...rest], { 'a.json': sheet });
      expect(out + err).not.toMatch(/^\s+9 {2}wall/m);
      expect(out + err).toMatch(/fitwright: a\.json: |Wall/);
    }
  });
});

describe('arguments', () => {
  it.each([
    [[], /Say what to do/],
    [['bore'], /no command "bore"/],
    [['check'], /needs a file/],
    [['check', 'a.json', '--st', 'x=1'], /There is no option "--st"/],
    [['check', 'a.json', '-set', 'x=1'], /There is no option "-s"/],
    [['check', 'a.json', '--json=yes'], /--json stands alone/],
    [['check', 'a.json', '--set'], /--set needs a name and an entry behind it/],
    [['check', 'a.json', '--set', '--json'], /--set needs a name and an entry behind it/],
    [
      ['check', 'gone.json', 'bore=1.75 in'],
      /bore=1\.75 in: cannot be read.*An entry is set by --set bore=1\.75 in/,
    ],
    [['check', 'a.json', '--set', 'journal'], /equals sign/],
    [['check', 'a.json', '--set', '=1 in'], /equals sign/],
    [['check', 'a.json', '--set', 'a=1', '--set', 'a=2'], /a is given twice/],
    [['cells', 'no-such-kind'], /no kind of cell "no-such-kind"/],
  ])('%j: says what is wrong and ends with 2', async (argv, words) => {
    const { exit, out, err } = await fitwright(argv);
    expect(exit).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(words);
  });

  it('--help and --version end with 0', async () => {
    expect(await fitwright(['--help'])).toMatchObject({ exit: 0, err: '' });
    const { exit, out } = await fitwright(['--version']);
    expect(exit).toBe(0);
    expect(out).toMatch(/^fitwright \d+\.\d+\.\d+\n$/);
  });

  it('cells lists the library and the inputs and outputs of a kind', async () => {
    expect((await fitwright(['cells'])).out).toMatch(/fits +interference-fit +\S/);
    expect((await fitwright(['cells', 'bush-close-in'])).out).toMatch(/close_in +length +bore closes in by/);
  });
});
