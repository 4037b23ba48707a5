import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { cellText, placeholdersIn } from '../../src/setup/new-cell.mjs';
import { inRepository } from '../../src/setup/root.mjs';
import { sensibleProblems } from './newcomer.ts';

const folder = inRepository('cells/kinds');

it('no cell holds text of the file it was started from', () => {
  expect(placeholdersIn(cellText('spindle-float', 'Spindle float'))).toHaveLength(13);
  const left = readdirSync(folder).flatMap((name) =>
    placeholdersIn(readFileSync(`${folder}/${name}`, 'utf8')).map(
      (text) => `cells/kinds/${name} still says "${text}": write there what is true of the cell.`,
    ),
  );
  expect(left).toEqual([]);
});

it('a sensible range is in the quantity of its input, and runs upwards', () => {
  const input = (sensible: [string, string]) => ({
    key: 'x',
    inputs: [{ name: 'bore', label: 'bore', quantity: 'length', sensible }],
  });
  expect(sensibleProblems(input(['1 mm', '1 m']))).toEqual([]);
  expect(sensibleProblems(input(['1 N', '1 kN']))).toEqual([
    'x, sensible range of bore: 1 N and 1 kN is no length; write it in a unit of length.',
  ]);
  expect(sensibleProblems(input(['1', '20']))).toHaveLength(1);
  expect(sensibleProblems(input(['1 m', '1 mm']))).toHaveLength(1);
  expect([...library.kinds.values()].flatMap(sensibleProblems)).toEqual([]);
});
