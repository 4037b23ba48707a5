import { expect, it } from 'vitest';
import type { SheetFile } from '../../shared/sheet/format.ts';
import { jobOf, templateOf } from '../../src/document/template.ts';
import { printOf as fingerprint } from './prints.ts';
import { bushJob } from './sample.ts';

const finished = (): SheetFile => {
  const job = bushJob();
  job.title = { ...job.title, customer: 'the mill', drawnBy: 'me' };
  job.cells[2]!.at = '68 degF';
  job.cells[3]!.issued = '2.2540 in';
  job.cells[4]!.outputs!.close_in!.measured = { entry: '1.9 thou' };
  job.variants![0]!.entries.bore = '2.3 in';
  job.tables = [{ table: 'materials', key: 'bronze', column: 'E', value: 1, low: 1, high: 1 }];
  return job;
};

const never = () => false;

it('what is read into an input of a library cell goes too, and stays as its example', () => {
  const job = finished();
  job.cells.push({
    id: 'shift',
    role: 'cell',
    kind: 'runout-offset',
    inputs: { runout: '2.4 thou ± 0.1 thou', length: '= journal_length', factor: '2' },
  });
  const { file, emptied } = templateOf(job, (kind, input) => kind === 'runout-offset' && input !== 'factor');
  expect(file.cells.at(-1)).toMatchObject({
    inputs: { length: '= journal_length', factor: '2' },
    examples: { runout: '2.4 thou ± 0.1 thou' },
  });
  expect(file.cells.at(-1)?.inputs).not.toHaveProperty('runout');
  expect(emptied.at(-1)).toEqual({ id: 'shift', field: 'inputs.runout', text: '2.4 thou ± 0.1 thou' });
});

it('a template keeps the thinking and leaves out readings and people, and says what it leaves out', () => {
  const { file, emptied } = templateOf(finished(), never);
  const [section, gauge, bore, od, press, pressed] = bushJob().cells;
  const { measured: _measured, ...odKept } = od!;
  const { dismissed: _dismissed, ...pressKept } = press!;
  const { entry: example, ...boreKept } = bore!;
  const { machine: _machine, ...title } = bushJob().title;
  expect(file).toEqual({
    ...bushJob(),
    template: true,
    title,
    cells: [section, gauge, { ...boreKept, fill: true, example }, odKept, pressKept, pressed],
  });
  expect(emptied).toEqual([
    { field: 'title.machine', text: 'shingle mill' },
    { field: 'title.customer', text: 'the mill' },
    { field: 'title.drawnBy', text: 'me' },
    { id: 'c3', field: 'entry', text: '2.2512; 2.2514 in' },
    { id: 'c3', field: 'at', text: '68 degF' },
    { id: 'c4', field: 'measured.entry', text: '2.2541 in' },
    { id: 'c4', field: 'measured.gauge', text: 'bore_gauge' },
    { id: 'c4', field: 'issued', text: '2.2540 in' },
    { id: 'c5', field: 'outputs.close_in.measured.entry', text: '1.9 thou' },
  ]);
});

it('what was answered about a size that stays is not asked in the next job, and nothing of a reading stays', () => {
  const job = finished();
  const answer = (text: string) => ({ slip: 'fraction:entry', text });
  job.cells.push({
    id: 'w',
    role: 'given',
    entry: '11/8 in',
    dismissed: [answer('11/8 in'), answer('1 in')],
  });
  job.cells.push({ id: 'r', role: 'measured', entry: '1.7841 in', dismissed: [answer('1.7841 in')] });
  const [given, read] = templateOf(job, never).file.cells.slice(-2);
  expect(given?.dismissed).toEqual([answer('11/8 in')]);
  expect(read).not.toHaveProperty('dismissed');
});

it('the job a template was made of is as before', () => {
  const job = finished();
  templateOf(job, never);
  expect(job).toEqual(finished());
});

it('a job knows the template it came from, and has its cells', () => {
  const template = templateOf(finished(), never).file;
  const job = jobOf(template, fingerprint(template), { customer: 'another mill' });
  expect(job).not.toHaveProperty('template');
  expect(job.from).toEqual({ title: 'Countershaft bush', fingerprint: fingerprint(template) });
  expect(job.title).toMatchObject({ title: 'Countershaft bush', customer: 'another mill' });
  expect(job.cells).toEqual(template.cells);
});
