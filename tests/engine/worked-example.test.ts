import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellKind } from '../../cells/record/cell.ts';
import { unitsOfExample, workOut } from '../../src/engine/book/worked-example.ts';

const kinds = [...library.kinds.values()];

test.each(kinds.map((kind) => [kind.key, kind] as const))(
  '%s: its examples give every output and every figure entered',
  (_, kind) => {
    for (const example of kind.examples) {
      const worked = workOut(library, kind, example);
      expect(Object.keys(worked.result.outputs)).toEqual(kind.outputs.map((output) => output.name));
      for (const [name, entry] of Object.entries(example.inputs)) {
        const quantity = kind.inputs.find((input) => input.name === name)?.quantity;
        if (quantity && typeof entry === 'string') expect(worked.given, name).toHaveProperty([name]);
      }
    }
  },
);

test('a figure that does not come out is told', () => {
  const kind = library.kinds.get('sine-bar') as CellKind;
  const [example] = kind.examples;
  if (!example) throw new Error('the sine bar has no example');
  const wrong = { ...example, expect: { height: { value: '1.0823 in', within: '1e-6 in' } } };
  expect(workOut(library, kind, example).expected.every((one) => one.holds)).toBe(true);
  expect(workOut(library, kind, wrong).expected).toMatchObject([{ output: 'height', holds: false }]);
});

test('inches where an example is given in them, in a record too', () => {
  expect(unitsOfExample({ size: '2.25 in', share: '0.5' }).length).toBe('in');
  expect(unitsOfExample({ size: '2 1/4"' }).length).toBe('in');
  expect(unitsOfExample({ metal: { E: '14.5 Mpsi' } }).length).toBe('in');
  expect(unitsOfExample({ size: '50 mm', angle: '3 deg', set: 'inner' }).length).toBe('mm');
});
