import { expect, it } from 'vitest';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import { figuresInWords, heldFigures } from '../../../src/document/sharing/held-figures.ts';
import { withMarks } from '../../../src/document/sharing/template-marks.ts';

const line = (name: string, more: Partial<CellRecord>): CellRecord => ({
  id: name,
  role: 'chosen',
  name,
  ...more,
});

it('a figure with a unit inside a formula stays with the machine it was thought of for; factors and classes do not', () => {
  const cells = [
    line('bush', {
      entry: '= gap - (6 thou + 0.5 * play)',
      limits: { lower: '= gap - 9 thou', upper: '= gap' },
    }),
    line('seat', { entry: '= 1.001 * gap + 0 in', tolerance: 'k6' }),
    line('bore', { entry: '= MAX(gap; 1/2 in; 20 %)', tolerance: '+.0005 -0 in' }),
    line('press', {
      role: 'cell',
      kind: 'bush-press',
      inputs: { diameter: '= gap * 2 + 1 mm', rated: '3 in' },
    }),
  ];
  expect(heldFigures({ cells }).map(({ id, field, figure }) => `${id} ${field}: ${figure}`)).toEqual([
    'bush entry: 6 thou',
    'bush limits.lower: 9 thou',
    'bore entry: 1/2 in',
    'bore tolerance: +.0005 -0 in',
    'press inputs.diameter: 1 mm',
  ]);
});

it('a variant goes along only where its author says so', () => {
  const file = {
    cells: [],
    variants: [
      { name: 'thin', entries: { wall: '2 mm' } },
      { name: 'thick', entries: { wall: '3 mm' } },
    ],
  } as unknown as SheetFile;
  const marks = { asked: new Set<string>(), locked: new Set<string>() };
  expect(withMarks(file, { ...marks, left: new Set(['thin']) }).variants).toEqual([file.variants![1]]);
  expect(withMarks(file, { ...marks, left: new Set(['thin', 'thick']) })).not.toHaveProperty('variants');
});

it('a size that a label or a note names stays as it is written; a standard, a share and a count are none', () => {
  const cells = [
    line('mic', { label: 'Micrometer, 1 to 2 in' }),
    { id: 's', role: 'section' as const, label: 'Ball bearing: shaft 30 k6, housing 62 H7' },
    line('bore', { label: 'Bore 2', note: 'Bored to 2.2620 in. Leaves 3 mm, or 1 1/8" of wall; 20 under.' }),
    line('pin', {
      note: 'One of 2 in the housing; a taper of 1 in 48; by ISO 286-2:2010, 30 % of it, 3 times.',
    }),
  ];
  const title = { title: 'Bush', note: 'For the 2 1/4 in arbor.' };
  expect(
    figuresInWords({ cells, title }).map(({ id, field, figure }) => `${id} ${field}: ${figure}`),
  ).toEqual([
    ' note: 2 1/4 in',
    'mic label: 2 in',
    's label: 30 k6',
    's label: 62 H7',
    'bore note: 2.2620 in',
    'bore note: 3 mm',
    'bore note: 1 1/8"',
  ]);
});
