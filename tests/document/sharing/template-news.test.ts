import { describe, expect, it } from 'vitest';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { withMarks } from '../../../src/document/sharing/template-marks.ts';
import { departures, newsOf, takeNews } from '../../../src/document/sharing/template-news.ts';
import { keepTemplate, originOf } from '../../../src/document/sharing/template-of.ts';
import { MemoryVault } from '../../../src/document/storage/memory-vault.ts';
import { Shop } from '../../../src/document/storage/shop.ts';
import { jobOf } from '../../../src/document/template.ts';
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

it('a template bears the marks of its author: a number to be filled in stays as an example, a formula stays', () => {
  const marks = new Map([
    ['b', { fill: true, locked: false }],
    ['c', { fill: true, locked: true }],
  ]);
  const marked = withMarks(template([{ id: 'c', role: 'given', name: 'length', entry: '2 in' }]), marks);
  expect(marked.cells.slice(1)).toMatchObject([
    { id: 'b', fill: true, entry: '=bore + 0.003 in' },
    { id: 'c', fill: true, locked: true, example: '2 in' },
  ]);
  expect(marked.cells[1]).not.toHaveProperty('locked');
  expect(marked.cells[2]).not.toHaveProperty('entry');
});
