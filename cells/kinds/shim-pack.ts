import { defineCell } from '../record/cell.ts';
import { lifting, oldParts, powerOff } from '../record/hazards.ts';

const shim = (n: number) => ({
  name: `shim_${n}`,
  label: `shim ${n}`,
  quantity: 'length',
  optional: true,
  sensible: ['0.01 mm', '5 mm'] as const,
});
const display = { in: 'thou', mm: 'mm' } as const;
/** A shim that is not at hand has no thickness. */
const thickness = (n: number): string => (n === 1 ? 'shim_1' : `IF(ISBLANK(shim_${n}); 0 m; shim_${n})`);
const all = [1, 2, 3, 4].map(thickness).join('; ');
const count = (n: number) => ({
  name: `count_${n}`,
  label: `of shim ${n}`,
  quantity: 'number',
  basis: 'geometry' as const,
  formula: `=SHIMCOUNT(${n}; pack_wanted; most_pieces; ${all})`,
  held: true,
});

export default defineCell({
  key: 'shim-pack',
  edition: 2,
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
      label: 'shim 1',
      quantity: 'length',
      sensible: ['0.01 mm', '5 mm'],
    },
    shim(2),
    shim(3),
    shim(4),
    {
      name: 'most_pieces',
      label: 'most shims in the pack',
      quantity: 'number',
      default: '5',
      sensible: ['1', '12'],
      source: 'common practice, no source: a pack of more springs and settles',
    },
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
      basis: 'geometry',
      formula: '=float_without - float_wanted',
      display,
    },
    count(1),
    count(2),
    count(3),
    count(4),
    {
      name: 'pack',
      label: 'pack of these shims',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula:
        '=count_1 * shim_1 + IF(ISBLANK(shim_2); 0 m; count_2 * shim_2) + IF(ISBLANK(shim_3); 0 m; count_3 * shim_3) + IF(ISBLANK(shim_4); 0 m; count_4 * shim_4)',
      held: true,
      face: true,
      display,
    },
    {
      name: 'not_filled',
      label: 'not filled',
      quantity: 'length',
      basis: 'geometry',
      formula: '=pack_wanted - pack',
      display,
      hint: 'By so much the float stays above the figure wanted.',
    },
    {
      name: 'pieces',
      label: 'shims in the pack',
      quantity: 'number',
      basis: 'geometry',
      formula: '=count_1 + count_2 + count_3 + count_4',
      held: true,
    },
    {
      name: 'float_left',
      label: 'float with the pack',
      quantity: 'length',
      basis: 'geometry',
      formula: '=float_without - IF(ISBLANK(pack_put_in); pack; pack_put_in)',
      face: true,
      limits: { lower: '=new_least', upper: '=new_greatest', metalOn: 'low' },
      display,
    },
  ],
  validity: [
    { holds: '=shim_1 > 0 m', otherwise: 'Shim 1 must be above zero.', grade: 'error' },
    {
      holds: '=float_without >= float_wanted',
      otherwise: 'The float is already below the figure wanted: shims cannot open it, metal has to come off.',
      grade: 'caution',
    },
    {
      holds: '=OR(pieces < most_pieces; not_filled < shim_1)',
      otherwise: 'So many of these shims do not fill it: take thicker ones, or make a spacer.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(shim_2); 1 > 0; shim_2 > 0 m)',
      otherwise: 'Shim 2 must be above zero: leave it blank where there is none.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(shim_3); 1 > 0; shim_3 > 0 m)',
      otherwise: 'Shim 3 must be above zero: leave it blank where there is none.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(shim_4); 1 > 0; shim_4 > 0 m)',
      otherwise: 'Shim 4 must be above zero: leave it blank where there is none.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(pack_put_in); 1 > 0; pack_put_in >= 0 m)',
      otherwise: 'A pack is not below zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Every pack of these shims is tried, any number of each: the thickest that does not pass the figure wanted, then the one of fewest shims.',
    'Shims as thick as marked: measure the pack together and enter it.',
  ],
  sources: ['Every pack tried; no more than about five in a pack: common practice, no source'],
  cautions: [
    'Shim edges cut: gloves, and deburr them. Lock the power off before reaching in.',
    lifting,
    oldParts,
    powerOff,
  ],
  examples: [
    {
      title: 'End play 0.47 mm, 0.06 to 0.11 mm specified: a pack of 0.36 to 0.41 mm',
      source:
        'a transmission maker’s service manual, worked example: 0.47 - 0.06 = 0.41 mm at most, 0.47 - 0.11 = 0.36 mm at least; shims of 0.10 mm are ours',
      grade: 'seen',
      inputs: {
        float_without: '0.47 mm',
        float_wanted: '0.06 mm',
        shim_1: '0.10 mm',
        new_least: '0.06 mm',
        new_greatest: '0.11 mm',
      },
      expect: {
        pack_wanted: { value: '0.41 mm', within: 1e-9 },
        pack: { value: '0.385 mm', within: '0.025 mm' },
      },
    },
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
    {
      title:
        'Float 0.036 in, 0.006 in wanted, shims of 20 and 15 thou: two of 15, where thickest first would stop at 20',
      source: 'Second method: every pack of two by hand: 15, 20, 30, 35, 40 thou',
      grade: 'recomputed',
      inputs: { float_without: '0.036 in', float_wanted: '0.006 in', shim_1: '0.020 in', shim_2: '0.015 in' },
      expect: {
        pack: { value: '0.030 in', within: '1e-6 in' },
        count_1: { value: '0', within: '1e-9' },
        count_2: { value: '2', within: 1e-9 },
      },
    },
  ],
});
