import { expect, test } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { withExamples } from '../../../src/command/example.ts';
import { Engine } from '../../../src/engine/engine.ts';
import { highColumn, lowColumn } from '../../../src/engine/network/grid.ts';
import type { Row } from '../../../src/engine/network/layout.ts';
import { alone, cornerOf, freeRow, nominalOf, Path } from '../../../src/engine/trial/path.ts';
import { sheetOf, templates } from '../../templates/shelf.ts';

/** Rows whose number a trial can move, and how the network is told of another one. */
const turned = ({ definition }: Row, by: number): Row['definition'] | undefined => {
  const { body } = definition;
  if (body.kind === 'number') return { ...definition, body: { ...body, value: body.value * by } };
  if (body.kind === 'source' && typeof body.nominal === 'number' && body.nominal !== 0)
    return { ...definition, body: { ...body, nominal: body.nominal * by } };
  return undefined;
};

// Every row downstream, at nominal and with each source at either end, is what the network makes of the edit: to the last bit.
test.each(templates.filter((_, i) => i % 6 === 0))('a trial is what an edit gives: %s', (name) => {
  const engine = new Engine(library);
  engine.load(withExamples(sheetOf(name)));
  const { network, grid, functions } = engine.computed();
  const book = { network, grid, functions };
  const rows = [...network.rows.values()].filter((row) => turned(row, 1) && row.usedBy.length > 0);
  let compared = 0;
  for (const row of rows.filter((_, i) => i % 4 === 0).slice(0, 4)) {
    const below = new Set<Row>([row]);
    for (const one of below) for (const user of one.usedBy) below.add(user);
    const sources = [...new Set([...below].flatMap((one) => one.members))].map(
      (one) => network.sourceRow(one) as Row,
    );
    const stands = sources.flatMap((source) => [alone(source, -1), alone(source, 1)]);
    const path = new Path(book, [{ row }], [...below], stands, 2);
    const was = row.definition;
    const [less, more] = [0.9996, 1.0003].map((by) => turned(row, by) as Row['definition']);
    const numberIn = ({ body }: Row['definition']): number =>
      body.kind === 'number' ? body.value : body.kind === 'source' ? (body.nominal as number) : Number.NaN;
    path.run([Float64Array.of(numberIn(less as Row['definition']), numberIn(more as Row['definition']))], 2);
    for (const [trial, definition] of [less, more].entries()) {
      network.update([definition as Row['definition']], []);
      network.settle();
      for (const one of below) {
        expect(path.nominal(one)[trial], `${one.key}`).toBe(nominalOf(book, one));
        sources.forEach((source, i) => {
          const at = [lowColumn(source.source as number), highColumn(source.source as number)];
          at.forEach((column, end) => {
            const value = grid.value(one.slot, column) ?? grid.nominal(one.slot);
            const found = path.at(one, 2 * i + end)[trial];
            expect(found, `${one.key} with ${source.key}`).toBe(
              typeof value === 'object' ? Number.NaN : Number(value),
            );
            compared++;
          });
        });
      }
    }
    network.update([was], []);
    network.settle();
  }
  expect(compared).toBeGreaterThan(50);
  engine.destroy();
});

test('in the corner of a row it is what its worst case tells', () => {
  const engine = new Engine(library);
  engine.load(withExamples(sheetOf('bush-in-opened-out-bore.json')));
  const book = engine.computed();
  let compared = 0;
  for (const row of book.network.rows.values()) {
    const lowest = row.bound?.worst?.lowest;
    const input = [...row.uses].find(({ members }) => members.length === 0);
    if (!lowest || !row.figure || !input || row.members.length < 2) continue;
    const free = freeRow(book, input.key) as Row;
    const ends = (['low', 'high'] as const).map((side) => cornerOf(book, row, lowest, side));
    const path = new Path(book, [{ row: free }], [row], ends, 1);
    path.run([Float64Array.of(nominalOf(book, free))], 1);
    expect([path.at(row, 0)[0], path.at(row, 1)[0]], row.key).toEqual([row.figure.low, row.figure.high]);
    compared++;
  }
  expect(compared).toBeGreaterThan(5);
  engine.destroy();
});
