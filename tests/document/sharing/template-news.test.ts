import { describe, expect, it } from 'vitest';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import {
  askedAtFirst,
  keyOfText,
  textsOfTemplate,
  withMarks,
} from '../../../src/document/sharing/template-marks.ts';
import { departures, newsOf, takeNews } from '../../../src/document/sharing/template-news.ts';
import { keepTemplate, originOf } from '../../../src/document/sharing/template-of.ts';
import { MemoryVault } from '../../../src/document/storage/memory-vault.ts';
import { Shop } from '../../../src/document/storage/shop.ts';
import { jobOf } from '../../../src/document/template.ts';
import { originOfJob } from '../../../src/page/handing-on/origin.ts';
import { printOf as fingerprint, printer } from '../prints.ts';

const template = (cells: CellRecord[] = []): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  template: true,
  title: { title: 'Bush in an opened-out bore' },
  units: { length: 'in' },
  rule: 'iso14253-2013',
  cells: [
    { id: 'a', role: 'measured', name: 'bore', label: 'Bore', fill: true, example: '2.2513 in' },
    {
      id: 'b',
      role: 'chosen',
      name: 'od',
      label: 'Bush outside',
      entry: '=bore + 0.003 in',
      tolerance: '+0.0005 -0 in',
      limits: { lower: '=bore + 0.002 in', upper: '=bore + 0.004 in' },
      locked: true,
    },
    ...cells,
  ],
});

const change = (file: SheetFile, id: string, fields: Partial<CellRecord>): SheetFile => ({
  ...file,
  cells: file.cells.map((cell) => (cell.id === id ? { ...cell, ...fields } : cell)),
});

const heavier = () => change(template(), 'b', { entry: '=bore + 0.0035 in' });

describe('a template that has moved on', () => {
  it('tells a job what changed, and not what the job filled in', () => {
    const job = change(jobOf(template(), fingerprint(template())), 'a', {
      entry: '2.2514 in',
      at: '70 degF',
    });
    expect(newsOf(job, heavier(), template())).toMatchObject([
      {
        id: 'b',
        what: 'changed',
        fields: [{ field: 'entry', now: '=bore + 0.003 in', after: '=bore + 0.0035 in', departs: false }],
      },
    ]);
    // Without the template as it was, the same.
    expect(newsOf(job, heavier())).toMatchObject([{ id: 'b', fields: [{ field: 'entry' }] }]);
  });

  it('speaks the names the job has, and takes over into a job that renamed its cells', () => {
    const job = change(
      change(jobOf(template(), fingerprint(template())), 'a', { name: 'hole', entry: '2.2514 in' }),
      'b',
      {
        entry: '=hole + 0.003 in',
        limits: { lower: '=hole + 0.002 in', upper: '=hole + 0.004 in' },
      },
    );
    const news = newsOf(job, heavier(), template());
    expect(news).toMatchObject([{ id: 'b', fields: [{ after: '=hole + 0.0035 in', departs: false }] }]);
    const taken = takeNews(job, heavier(), news);
    expect(taken.cells[1]).toEqual({ ...job.cells[1], entry: '=hole + 0.0035 in' });
    expect(taken.cells[0]).toEqual(job.cells[0]);
  });

  it('says where the job has gone its own way, and leaves what is left', () => {
    const job = change(jobOf(template(), fingerprint(template())), 'b', { entry: '=bore + 0.001 in' });
    const news = newsOf(job, heavier(), template());
    expect(news[0]!.fields[0]).toMatchObject({ now: '=bore + 0.001 in', departs: true });
    expect(takeNews(job, heavier(), [])).toEqual(job);
  });

  it('brings new cells to their place under a free name, and takes away what it dropped', () => {
    const later = template([{ id: 'c', role: 'worked', name: 'wall', entry: '=od - bore' }]);
    const job = jobOf(template(), fingerprint(template()));
    job.cells.push({ id: 'own', role: 'given', name: 'wall', entry: '1 in' });
    const news = newsOf(job, later, template());
    expect(news).toMatchObject([{ id: 'c', what: 'added' }]);
    const taken = takeNews(job, later, news);
    expect(taken.cells.map(({ id, name, entry }) => [id, name, entry]).slice(1)).toEqual([
      ['b', 'od', '=bore + 0.003 in'],
      ['c', 'wall_2', '=od - bore'],
      ['own', 'wall', '1 in'],
    ]);
    const back = newsOf(taken, template(), later);
    expect(back).toMatchObject([{ id: 'c', what: 'gone' }]);
    expect(takeNews(taken, template(), back)).toEqual(job);
  });

  it('has nothing to tell once all is taken', () => {
    const job = jobOf(template(), fingerprint(template()));
    const taken = takeNews(job, heavier(), newsOf(job, heavier(), template()));
    expect(newsOf(taken, heavier(), heavier())).toEqual([]);
    expect(newsOf(taken, heavier())).toEqual([]);
  });
});

it('a job says where it departs from what its template locked', () => {
  const job = change(jobOf(template(), fingerprint(template())), 'b', {
    entry: '=bore + 0.001 in',
    locked: false,
  });
  expect(departures(job, template())).toMatchObject([
    { id: 'b', fields: [{ field: 'entry', now: '=bore + 0.001 in', after: '=bore + 0.003 in' }] },
  ]);
  expect(departures(jobOf(template(), fingerprint(template())), template())).toEqual([]);
});

describe('what the template asked for', () => {
  const asking = (cells: Partial<CellRecord>): SheetFile =>
    template([{ id: 'c', role: 'chosen', name: 'wall', locked: true, ...cells }]);
  const asked = asking({
    fill: true,
    example: '2 in',
    limits: { lowerExample: '1 in' },
    examples: { thread: 'M10' },
  });
  const filled = change(jobOf(asked, fingerprint(asked)), 'c', {
    entry: '3 in',
    limits: { lowerExample: '1 in', lower: '2.5 in' },
    inputs: { thread: 'M12' },
  });

  it('is the job’s own once it is filled in: neither news nor a departure, whatever is known of the template', () => {
    expect(departures(filled, asked)).toEqual([]);
    const moved = change(asked, 'c', { example: '5 in', limits: { lowerExample: '4 in' }, note: 'Mind it.' });
    const news = newsOf(filled, moved);
    expect(news).toMatchObject([{ id: 'c', fields: [{ field: 'note' }] }]);
    expect(takeNews(filled, moved, news).cells[2]).toMatchObject({
      entry: '3 in',
      limits: { lower: '2.5 in' },
      inputs: { thread: 'M12' },
    });
    const firm = asking({ entry: '7 in', limits: { lower: '6 in' }, inputs: { thread: 'M20' } });
    expect(newsOf(filled, firm, asked)).toEqual([]);
  });

  it('is offered where the job has nothing yet', () => {
    const firm = asking({ entry: '7 in', limits: { lower: '6 in' }, inputs: { thread: 'M20' } });
    const fields = newsOf(jobOf(asked, fingerprint(asked)), firm, asked)[0]?.fields.map(({ field }) => field);
    expect(fields?.toSorted()).toEqual(['entry', 'inputs.thread', 'limits.lower']);
  });
});

describe('a job in another shop', () => {
  const shop = () => new Shop(new MemoryVault(), [], { state: 'saved' }, printer);

  it('takes sizes of an inch template by their value, without units as they were typed', async () => {
    const here = shop();
    const bare = (limit: string) =>
      template([
        { id: 'c', role: 'given', name: 'wall', quantity: 'length', entry: '2', limits: { lower: limit } },
      ]);
    const old = bare('1.5');
    await keepTemplate(here, old);
    await here.create(bare('1.75'));
    const job = jobOf(old, fingerprint(old));
    // As a shop in millimetres reads it.
    const metric: SheetFile = {
      ...job,
      units: { length: 'mm' },
      cells: job.cells.map((cell) =>
        cell.id === 'c' ? { ...cell, entry: '2 in', limits: { lower: '1.5 in' } } : cell,
      ),
    };
    const origin = await originOfJob(here, metric);
    expect(origin).toMatchObject({ unclear: [], departures: [] });
    expect(origin?.news).toMatchObject([
      { id: 'c', fields: [{ field: 'limits.lower', now: '1.5 in', after: '1.75 in', departs: false }] },
    ]);
    expect(takeNews(metric, origin!.own, origin!.news).cells[2]?.limits).toEqual({ lower: '1.75 in' });
  });

  it.each([
    ['mm', 'in', 'um', 'thou'],
    ['in', 'mm', 'thou', 'um'],
  ] as const)(
    'tells a job in %s of a template in %s line by line, each in its own units, and overwrites nothing',
    async (own, theirs, step, theirStep) => {
      const here = shop();
      const say = (n: number, unit: string) => `${n} ${unit}`;
      const inTheirs = (limit: number, cells: CellRecord[] = []): SheetFile => ({
        ...template([
          {
            id: 'c',
            role: 'given',
            name: 'float',
            quantity: 'length',
            entry: say(5, theirStep),
            display: theirStep,
            limits: { lower: say(limit, theirStep), upper: say(9, theirStep) },
          },
          ...cells,
        ]),
        units: { length: theirs },
      });
      const old = inTheirs(3);
      await keepTemplate(here, old);
      // A new line without units too: in the template's lengths, which it is given.
      await here.create(
        inTheirs(4, [{ id: 'd', role: 'given', name: 'wall', quantity: 'length', entry: '7' }]),
      );
      const begun = jobOf(old, fingerprint(old));
      const job: SheetFile = {
        ...begun,
        units: { length: own },
        cells: begun.cells.map((cell) =>
          cell.id === 'a'
            ? { ...cell, entry: say(57, own) }
            : cell.id === 'c'
              ? { ...cell, display: step, limits: { lower: say(3, theirStep), upper: say(8, step) } }
              : cell,
        ),
      };
      const origin = await originOfJob(here, job);
      expect(origin?.unclear).toEqual([]);
      expect(origin?.news).toMatchObject([
        {
          id: 'c',
          fields: [
            { field: 'limits.lower', now: say(3, theirStep), after: say(4, theirStep), departs: false },
          ],
        },
        { id: 'd', what: 'added', cell: { entry: say(7, theirs) } },
      ]);
      const taken = takeNews(job, origin!.own, origin!.news);
      expect(taken.units).toEqual(job.units);
      expect(taken.cells.slice(0, 2)).toEqual(job.cells.slice(0, 2));
      expect(taken.cells[2]).toEqual({
        ...job.cells[2],
        limits: { lower: say(4, theirStep), upper: say(8, step) },
      });
      expect(taken.cells[3]).toMatchObject({ entry: say(7, theirs) });
    },
  );
});

describe('the template of a job', () => {
  const shop = () => new Shop(new MemoryVault(), [], { state: 'saved' }, printer);

  it('is found as it was and as it is', async () => {
    const here = shop();
    await keepTemplate(here, template());
    const { from } = jobOf(template(), fingerprint(template()));
    expect(await originOf(here, from, [template()])).toMatchObject({ current: true });
    expect(await originOf(here, from, [heavier()])).toEqual({
      template: heavier(),
      fingerprint: fingerprint(heavier()),
      current: false,
      base: template(),
    });
    await here.create(heavier());
    expect(await originOf(here, from, [])).toMatchObject({ current: false, template: heavier() });
    expect(await originOf(here, { ...from!, title: 'Another' }, [template()])).toBeUndefined();
    expect(await originOf(here, undefined, [template()])).toBeUndefined();
  });
});

it('a template lends no figure with a unit unless its author keeps it; a reading is never kept, a formula stays', () => {
  const file = template([
    {
      id: 'c',
      role: 'given',
      name: 'length',
      entry: '2 in',
      limits: { lower: '1.9 in', upper: '= 2 * bore' },
    },
    {
      id: 'd',
      role: 'cell',
      name: 'fit',
      kind: 'interference-fit',
      inputs: { length: '3 in', friction: '0.15', inner_material: 'bronze', outer_material: 'steel-mild' },
      outputs: { pressure: { limits: { upper: '5 ksi' } } },
    },
    { id: 'bronze', role: 'cell', name: 'bronze', kind: 'material', inputs: { material: 'sae-660' } },
  ]);
  const texts = textsOfTemplate(file);
  expect(texts.map(({ id, field, is }) => `${id} ${field} ${is}`)).toEqual([
    'a entry asked',
    'b entry follows',
    'b limits.lower follows',
    'b limits.upper follows',
    'c entry figure',
    'c limits.lower figure',
    'c limits.upper follows',
    'd inputs.length figure',
    'd inputs.friction figure',
    'd inputs.inner_material follows',
    'd inputs.outer_material choice',
    'd outputs.pressure.limits.upper figure',
    'bronze inputs.material choice',
  ]);
  const asked = new Set(askedAtFirst(texts).map(keyOfText));
  const marked = withMarks(file, { asked, locked: new Set(['c']) });
  expect(marked.cells[0]).toEqual(file.cells[0]);
  expect(marked.cells[1]).not.toHaveProperty('locked');
  expect(marked.cells[2]).toEqual({
    id: 'c',
    role: 'given',
    name: 'length',
    example: '2 in',
    limits: { lowerExample: '1.9 in', upper: '= 2 * bore' },
    fill: true,
    locked: true,
  });
  expect(marked.cells[3]).toMatchObject({
    inputs: { friction: '0.15' },
    examples: { length: '3 in' },
    outputs: { pressure: { limits: { upperExample: '5 ksi' } } },
  });
  // What the author keeps stands as it was; a reading does not.
  const kept = withMarks(marked, { asked: new Set(), locked: new Set() });
  expect(kept.cells[2]).toEqual(file.cells[2]);
  expect(kept.cells[3]).toEqual(file.cells[3]);
  expect(kept.cells[0]).toEqual(file.cells[0]);
});
