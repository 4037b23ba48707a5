import { describe, expect, it } from 'vitest';
import { library as whole } from '../../cells/catalogue.ts';
import type { CellKind } from '../../cells/cell.ts';
import { library as computing } from '../../cells/computing.ts';
import { Engine } from '../../src/engine/engine.ts';
import { simulate } from '../../src/engine/montecarlo/simulate.ts';
import { workOut } from '../../src/engine/worked-example.ts';
import { READ, READ_OF, splitCell } from '../../src/setup/split-cells.mjs';
import { expectSameAnswers } from '../engine/same-answers.ts';
import { jobs, sheetOf } from '../templates/shelf.ts';

const SEED = 20261128;

const joined = new Map(
  Object.values(
    import.meta.glob<CellKind>('../../cells/kinds/*.ts', {
      eager: true,
      import: 'default',
      query: '?joined',
    }),
  ).map((kind) => [kind.key, kind]),
);
const kinds = [...whole.kinds.values()];

const lacking = (record: object, names: readonly string[]) =>
  Object.fromEntries(Object.entries(record).filter(([name]) => !names.includes(name)));

describe('a cell of the library in two parts', () => {
  it.each(kinds.map((kind) => [kind.key, kind] as const))(
    '%s joined is the record as written',
    (key, kind) => {
      const { drawing, ...rest } = joined.get(key)!;
      const { drawing: drawn, ...written } = kind;
      expect(rest).toEqual(written);
      expect(typeof drawing).toBe(typeof drawn);
      const values = Object.fromEntries(
        [...kind.inputs, ...kind.outputs].map(({ name }, i) => [name, 0.01 + i / 1000]),
      );
      expect(drawing?.(values)).toEqual(drawn?.(values));
    },
  );

  it('has all but what is only read in the part that computes', () => {
    for (const kind of kinds) {
      const part = computing.kinds.get(kind.key)!;
      const of = (list: 'inputs' | 'outputs', from: CellKind) =>
        from[list].map((one) => lacking(one, READ_OF[list]));
      const { inputs, outputs, ...rest } = part;
      expect(rest).toEqual(lacking(lacking(kind, READ), ['inputs', 'outputs']));
      expect(of('inputs', part)).toEqual(of('inputs', kind));
      expect(of('outputs', part)).toEqual(of('outputs', kind));
      for (const name of READ) expect(part).not.toHaveProperty(name);
    }
    expect([...computing.kinds.keys()]).toEqual([...whole.kinds.keys()]);
    expect(computing.tables).toEqual(whole.tables);
    expect(computing.functions).toEqual(whole.functions);
  });

  it('computes the same in that part: every edit of a sheet of every kind of cell, right and wrong', () => {
    expectSameAnswers(() => [new Engine(whole), new Engine(computing)], { seed: SEED, numRuns: 30 });
  });

  it('computes the same in that part: every example of the cell book', () => {
    for (const kind of kinds)
      for (const example of kind.examples)
        expect(
          workOut(computing, computing.kinds.get(kind.key)!, example),
          `${kind.key}: ${example.title}`,
        ).toEqual(workOut(whole, kind, example));
  });

  it('draws the same in that part', () => {
    for (const name of jobs)
      expect(simulate(sheetOf(name), computing, { draws: 2000 })).toEqual(
        simulate(sheetOf(name), whole, { draws: 2000 }),
      );
  });

  it('leaves in the first part what is not written out with a name', () => {
    const code = `const one = (name: string) => ({ name, hint: 'kept' });
export default defineCell({ title: 'T', purpose: 'P', inputs: [one('a'), { name: 'b', hint: 'read', label: 'B' }], outputs: [] });`;
    const { computing: first, joined: all } = splitCell(code, '/cells/kinds/t.ts');
    expect(first).toContain("hint: 'kept'");
    expect(first).not.toContain('read');
    expect(first).not.toContain('purpose');
    expect(all).toContain('inputs: { "b": { hint: \'read\' } }');
  });

  it('refuses a file that is written otherwise', () => {
    expect(() => splitCell('export default { title: 1 };', '/cells/kinds/t.ts')).toThrow('defineCell');
  });
});
