import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { gauges as allGauges } from '../../cells/tables/gauges/gauges.ts';
import { readSheet } from '../../shared/sheet/read.ts';
import { sheetSchema } from '../../shared/sheet/sheet-schema.ts';
import { writeSheet } from '../../shared/sheet/write.ts';
import { withExamples } from '../../src/command/example.ts';
import { findingsOf } from '../../src/command/findings.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { printer } from '../document/prints.ts';
import { jobs, sheetOf, templates, textOf } from './shelf.ts';

const validate = new Ajv2020({ strict: false }).compile(sheetSchema());

describe.each([...templates, ...jobs])('%s', (name) => {
  it('is a sheet by the JSON Schema and for the reader, without a warning', () => {
    expect(validate(JSON.parse(textOf(name))), JSON.stringify(validate.errors)).toBe(true);
    expect(readSheet(textOf(name))).toMatchObject({ warnings: [] });
  });

  it('is written as the writer writes it', () => {
    expect(textOf(name), 'npm run format puts it right').toBe(writeSheet(sheetOf(name)));
  });

  it('works out with its examples: nothing in error, nothing missing, nothing asked', () => {
    const file = withExamples(sheetOf(name));
    const byId = new Map(file.cells.map((cell) => [cell.id, cell]));
    const { cells } = computeSheet(file, library);
    const findings = cells.flatMap((result) => findingsOf(byId.get(result.id)!, undefined, result));
    expect(findings.filter(({ grade }) => grade !== 'caution')).toEqual([]);
    expect(cells.flatMap(({ slips }) => slips)).toEqual([]);
    const waiting = cells.flatMap(({ id, outputs }) =>
      Object.entries(outputs).flatMap(([output, { check, idle }]) =>
        !idle && check.asNew.state === 'waiting' ? [`${byId.get(id)?.name}.${output}`] : [],
      ),
    );
    expect(waiting).toEqual([]);
  });

  it('proves the repair of its examples: nothing misses or may miss that is still to be cut', () => {
    const file = withExamples(sheetOf(name));
    const { cells } = computeSheet(file, library);
    const doubtful = cells.flatMap(({ id, outputs }) =>
      Object.entries(outputs).flatMap(([output, { check }]) =>
        /miss/.test(check.asNew.state)
          ? [`${file.cells.find((cell) => cell.id === id)?.name}.${output}`]
          : [],
      ),
    );
    expect(doubtful).toEqual([]);
  });

  it('says for every cell what it is', () => {
    const unnamed = sheetOf(name).cells.filter(({ role, name: cell, label, note }) =>
      role === 'remark' ? !note : role === 'section' ? !label : !cell || !label,
    );
    expect(unnamed).toEqual([]);
  });

  it('begins with the part on the bench: what gauges and materials are comes last', () => {
    const behind = sheetOf(name).cells.flatMap(({ kind, role }) =>
      role === 'section' || role === 'remark' ? [] : [kind === 'gauge' || kind === 'material'],
    );
    expect(behind).toEqual([...behind].sort((a, b) => Number(a) - Number(b)));
  });

  it('has notes that make sense on paper, where no entry stands beside them', () => {
    const notes = sheetOf(name).cells.flatMap(({ note }) => note ?? []);
    expect(notes.filter((note) => /readings here|it here|see below/.test(note))).toEqual([]);
  });
});

describe.each(templates)('%s', (name) => {
  const file = sheetOf(name);

  it('is a template: readings emptied, every emptied cell to be filled in and with an example', () => {
    expect(file.template).toBe(true);
    // What stands in the title block is of the one machine, its metals too.
    expect(file.title).not.toHaveProperty('customer');
    expect(file.title).not.toHaveProperty('material');
    for (const cell of file.cells) {
      if (cell.role === 'measured') expect(cell, cell.name).toMatchObject({ fill: true });
      if (cell.fill) expect(cell.example ?? cell.examples, cell.name).toBeTruthy();
      if (cell.fill && cell.role !== 'cell') expect(cell.entry ?? '', cell.name).toBe('');
      expect(cell.measured, cell.name).toBeUndefined();
      expect(cell.issued, cell.name).toBeUndefined();
    }
  });

  it('names the gauge of every size it asks for afterwards: a bare reading leaves the error of the gauge out of the proof', () => {
    const { cells } = computeSheet(withExamples(file), library);
    const gauges = file.cells.filter(({ kind }) => kind === 'gauge').map(({ inputs }) => inputs?.gauge);
    const reaches = (size: number, hole: boolean): boolean =>
      gauges.some((key) => {
        const found = allGauges.find((gauge) => gauge.key === key);
        if (!found || (hole && found.key.startsWith('micrometer'))) return false;
        return found.range[0] <= size && size <= found.range[1];
      });
    const bare = file.cells.filter(
      (cell) =>
        cell.quantity === 'length' &&
        /enter (its|the) readings/i.test(cell.note ?? '') &&
        cell.gauge === undefined &&
        reaches(
          cells.find(({ id }) => id === cell.id)?.outputs.value?.planned?.value ?? Number.NaN,
          cell.limits?.metalOn === 'low',
        ),
    );
    expect(bare.map(({ name: cell }) => cell)).toEqual([]);
  });

  it('names gauges that reach the size they are to read', () => {
    const { cells } = computeSheet(withExamples(file), library);
    const named = new Map(withExamples(file).cells.map(({ name: cell, inputs }) => [cell, inputs?.gauge]));
    const wrong = file.cells.filter((cell) => {
      const gauge = allGauges.find(({ key }) => key === named.get(cell.gauge));
      const { measured, planned } = cells.find(({ id }) => id === cell.id)?.outputs.value ?? {};
      const size = Math.abs((measured ?? planned)?.value ?? Number.NaN);
      return cell.gauge !== undefined && !(gauge && gauge.range[0] <= size && size <= gauge.range[1]);
    });
    expect(wrong.map(({ name: cell, gauge }) => `${cell} by ${gauge}`)).toEqual([]);
  });

  it('lends no figure of its machine: sizes, limits, gauges and materials are examples alone', () => {
    // A bare factor, a share, a clearance of nothing and how well a size can be cut belong to no one machine.
    const isSize = (text: string | undefined) =>
      text !== undefined && /^[+-]?[\d.].*[A-Za-z"°]/.test(text) && !/^[+-]?0(\.0+)?\s/.test(text);
    const lent = file.cells.flatMap((cell) => {
      const limits = [cell.limits, ...Object.values(cell.outputs ?? {}).map((settings) => settings.limits)];
      const chosen = cell.kind === 'gauge' || cell.kind === 'material' ? cell.inputs?.[cell.kind] : undefined;
      const texts = [
        cell.entry,
        ...limits.flatMap((one) => [one?.lower, one?.upper, one?.wear]),
        ...Object.values(cell.inputs ?? {}),
      ];
      return [...texts.filter(isSize), ...(chosen ? [chosen] : [])].map((text) => `${cell.name}: ${text}`);
    });
    expect(lent).toEqual([]);
    expect([file.title.part, file.title.machine, file.title.customer]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('judges nothing by an example: with sizes of another machine and limits left blank no check holds by one', () => {
    // Everything is filled in but the limits the template asks for, as whoever goes on without them would.
    const whole = withExamples(file);
    const asked = file.cells.flatMap(({ id, limits, outputs }) =>
      Object.entries({
        value: limits,
        ...Object.fromEntries(Object.entries(outputs ?? {}).map(([n, o]) => [n, o.limits])),
      })
        .filter(([, own]) => own && (own.lowerExample ?? own.upperExample ?? own.wearExample) !== undefined)
        .map(([output]) => ({ id, output })),
    );
    const left = {
      ...whole,
      cells: whole.cells.map((cell, i) => ({
        ...cell,
        ...(file.cells[i]!.limits && { limits: file.cells[i]!.limits }),
        ...(file.cells[i]!.outputs && { outputs: file.cells[i]!.outputs }),
      })),
    };
    const { cells } = computeSheet(left, library);
    const judged = asked.flatMap(({ id, output }) => {
      const outputs = cells.find((cell) => cell.id === id)?.outputs;
      const found = outputs?.[output] ?? outputs?.mean;
      return found && /^(holds|proven)/.test(found.check.asNew.state) ? [`${id}.${output}`] : [];
    });
    expect(judged).toEqual([]);
  });

  it('waits for what is to be filled in, and has no error while it does', () => {
    const byId = new Map(file.cells.map((cell) => [cell.id, cell]));
    const { cells } = computeSheet(file, library);
    const errors = cells.flatMap((result) =>
      findingsOf(byId.get(result.id)!, undefined, result).filter(({ grade }) => grade === 'error'),
    );
    expect(errors).toEqual([]);
  });
});

it.each(jobs)('%s names the template it came from, at that revision', async (name) => {
  const { from, template } = sheetOf(name);
  expect(template).toBeUndefined();
  const source = templates.map(sheetOf).find(({ title }) => title.title === from?.title);
  expect(source).toBeDefined();
  expect(await printer.isOf(from!.fingerprint, source!), await printer.print(source!)).toBe(true);
});
