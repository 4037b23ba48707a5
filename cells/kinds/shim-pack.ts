import { defineCell } from '../cell.ts';

const shim = (n: number) => ({
  name: `shim_${n}`,
  label: `shim ${n}, thinner`,
  quantity: 'length',
  optional: true,
  sensible: ['0.01 mm', '5 mm'] as const,
});
const display = { in: 'thou', mm: 'mm' } as const;
/** A hair more than a whole shim counts as a whole one. */
const whole = (rest: string, n: number): string =>
  `=IF(ISBLANK(shim_${n}); 0; INT(MAX(${rest}; 0 m) / shim_${n} + 0.000001))`;
const left = (rest: string, n: number): string =>
  `=${rest} - IF(ISBLANK(shim_${n}); 0 m; count_${n} * shim_${n})`;

export default defineCell({
  key: 'shim-pack',
  edition: 1,
  title: 'Shim pack',
  purpose: 'Which shims out of those at hand bring a float to the figure wanted, and what float they leave.',
  group: 'clearance',
  inputs: [
    {
      name: 'float_without',
      label: 'float without shims',
      quantity: 'length',
      sensible: ['0 mm', '10 mm'],
      hint: 'Measured, or from the end float cell.',
    },
    {
      name: 'float_wanted',
      label: 'float wanted',
      quantity: 'length',
      sensible: ['-0.2 mm', '2 mm'],
      hint: 'The pack never takes it below this. Preload is entered with a minus.',
    },
    {
      name: 'shim_1',
      label: 'shim 1, the thickest at hand',
      quantity: 'length',
      sensible: ['0.01 mm', '5 mm'],
    },
    shim(2),
    shim(3),
    shim(4),
    {
      name: 'pack_put_in',
      label: 'pack really put in',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '20 mm'],
      hint: 'As measured together, clean and flat. Blank: the pack worked out.',
    },
    {
      name: 'new_least',
      label: "maker's least float",
      quantity: 'length',
      sensible: ['-0.2 mm', '2 mm'],
      optional: true,
    },
    {
      name: 'new_greatest',
      label: "maker's greatest float",
      quantity: 'length',
      sensible: ['-0.2 mm', '2 mm'],
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'pack_wanted',
      label: 'pack wanted',
      quantity: 'length',
      formula: '=float_without - float_wanted',
      display,
    },
    { name: 'count_1', label: 'of shim 1', quantity: 'number', formula: whole('pack_wanted', 1), held: true },
    {
      name: 'rest_1',
      label: 'still to fill after shim 1',
      quantity: 'length',
      formula: left('pack_wanted', 1),
      display,
    },
    { name: 'count_2', label: 'of shim 2', quantity: 'number', formula: whole('rest_1', 2), held: true },
    {
      name: 'rest_2',
      label: 'still to fill after shim 2',
      quantity: 'length',
      formula: left('rest_1', 2),
      display,
    },
    { name: 'count_3', label: 'of shim 3', quantity: 'number', formula: whole('rest_2', 3), held: true },
    {
      name: 'rest_3',
      label: 'still to fill after shim 3',
      quantity: 'length',
      formula: left('rest_2', 3),
      display,
    },
    { name: 'count_4', label: 'of shim 4', quantity: 'number', formula: whole('rest_3', 4), held: true },
    { name: 'rest_4', label: 'not filled', quantity: 'length', formula: left('rest_3', 4), display },
    {
      name: 'pack',
      label: 'pack of these shims',
      quantity: 'length',
      formula: '=pack_wanted - rest_4',
      held: true,
      face: true,
      display,
    },
    {
      name: 'pieces',
      label: 'shims in the pack',
      quantity: 'number',
      formula: '=count_1 + count_2 + count_3 + count_4',
      held: true,
    },
    {
      name: 'float_left',
      label: 'float with the pack',
      quantity: 'length',
      formula: '=float_without - IF(ISBLANK(pack_put_in); pack; pack_put_in)',
      face: true,
      limits: { lower: '=new_least', upper: '=new_greatest', metalOn: 'low' },
      display,
    },
  ],
  validity: [
    { holds: '=shim_1 > 0 m', otherwise: 'The thickest shim must be above zero.', grade: 'error' },
    {
      holds: '=float_without >= float_wanted',
      otherwise: 'The float is already below the figure wanted: shims cannot open it, metal has to come off.',
      grade: 'caution',
    },
    {
      holds: '=pieces <= 5',
      otherwise: 'More than five shims in a pack spring and settle: use thicker ones or make a spacer.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Thickest first, never past the figure wanted; shims are given from the thickest to the thinnest.',
    'Shims as thick as marked: measure the pack together and enter it.',
  ],
  sources: ['Common practice, no source: thickest first, no more than about five in a pack'],
  cautions: ['Shim edges cut: gloves, and deburr them. Lock the power off before reaching in.'],
  examples: [
    {
      title: 'Float 0.043 in, 0.006 in wanted, shims of 20, 10, 5 and 2 thou',
      source:
        'Second method: every pack of these shims tried; the thickest that leaves the float wanted, with the fewest shims',
      grade: 'recomputed',
      inputs: {
        float_without: '0.043 in',
        float_wanted: '0.006 in',
        shim_1: '0.020 in',
        shim_2: '0.010 in',
        shim_3: '0.005 in',
        shim_4: '0.002 in',
      },
      expect: {
        pack: { value: '0.037 in', within: '1e-6 in' },
        pieces: { value: '4', within: 1e-9 },
        float_left: { value: '0.006 in', within: '1e-6 in' },
      },
    },
  ],
});
