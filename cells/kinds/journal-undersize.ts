import { defineCell } from '../record/cell.ts';
import { centres, lifting, oldParts, wheel } from '../record/hazards.ts';

export default defineCell({
  key: 'journal-undersize',
  edition: 1,
  title: 'Next undersize of a worn journal',
  purpose: 'The standard undersize at which a worn, out-of-true journal cleans up all round.',
  group: 'bore and shaft',
  inputs: [
    { name: 'new_size', label: 'diameter when new', quantity: 'length', sensible: ['5 mm', '1 m'] },
    {
      name: 'least',
      label: 'least diameter as found',
      quantity: 'length',
      role: 'measured',
      sensible: ['5 mm', '1 m'],
      hint: 'The least of all places and directions: = journal.least',
    },
    {
      name: 'runout',
      label: 'total indicator reading of the journal',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '2 mm'],
      hint: 'About the axis it will be ground on.',
    },
    {
      name: 'stock',
      label: 'to come off below the deepest wear, on the diameter',
      quantity: 'length',
      sensible: ['0 mm', '1 mm'],
      hint: 'For scores, a hard skin and the last pass.',
    },
    { name: 'series', label: 'series of undersizes', choice: 'undersizes' },
    {
      name: 'case_depth',
      label: 'depth of the hard case, on the radius',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '10 mm'],
      hint: 'Of a hardened journal, as it was when new. 0 for a journal that is not hardened.',
    },
    {
      name: 'fillet',
      label: 'radius at the shoulder, drawing',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '30 mm'],
    },
    {
      name: 'wheel_radius',
      label: 'radius the wheel is dressed to',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '30 mm'],
    },
  ],
  outputs: [
    {
      name: 'undersize',
      label: 'undersize',
      quantity: 'length',
      basis: 'geometry',
      formula: '=UNDERSIZE(series; new_size; cleans_up_at)',
      held: true,
      hint: 'A decision: the doubt of the readings does not move it. Whether it cleans up is judged by what it leaves to spare.',
      face: true,
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'ground_size',
      label: 'grind to',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=new_size - undersize',
      face: true,
    },
    {
      name: 'needed',
      label: 'under new where it cleans up',
      quantity: 'length',
      basis: 'geometry',
      formula: '=new_size - cleans_up_at',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'cleans_up_at',
      label: 'cleans up at',
      quantity: 'length',
      basis: 'geometry',
      formula: '=least - runout - stock',
      hint: 'Largest true circle inside the worn journal, less the stock.',
    },
    {
      name: 'to_spare',
      label: 'undersize less what is needed',
      quantity: 'length',
      basis: 'geometry',
      formula: '=undersize - needed',
      limits: { lower: '=0 mm', metalOn: 'low' },
      hint: 'Below zero a place of the journal stays black: the next undersize.',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'case_left',
      label: 'hard case left, on the radius',
      quantity: 'length',
      basis: 'geometry',
      formula: '=IF(case_depth > 0 mm; case_depth - undersize / 2 - runout / 2; 0 mm)',
      hint: 'On the thin side. 0 where there never was one.',
    },
    {
      name: 'strength_left',
      label: 'strength in bending and torsion left',
      quantity: 'number',
      basis: 'model',
      formula: '=(ground_size / new_size) ^ 3',
      display: { in: '%', mm: '%' },
      hint: 'By the section alone: third power of the diameter.',
    },
  ],
  validity: [
    { holds: '=AND(new_size > 0 mm; least > 0 mm)', otherwise: 'A diameter is above zero.', grade: 'error' },
    {
      holds: '=runout >= 0 mm',
      otherwise: 'An indicator reading over a turn is not below zero.',
      grade: 'caution',
    },
    { holds: '=stock >= 0 mm', otherwise: 'Stock is not below zero.', grade: 'error' },
    {
      holds: '=least <= new_size + 0.05 mm',
      otherwise: 'The journal measures larger than new: look at the readings, or at the size when new.',
      grade: 'caution',
    },
    {
      holds: '=NOT(ISBLANK(fillet))',
      otherwise:
        'Radius at the shoulder not entered: it must be ground to the drawing, a sharper one breaks the shaft there.',
      grade: 'caution',
    },
    {
      holds: '=OR(ISBLANK(fillet); ISBLANK(wheel_radius); wheel_radius >= fillet)',
      otherwise: 'The wheel is dressed to a smaller radius than the shoulder had: the shaft may break there.',
      grade: 'caution',
    },
    {
      holds: '=NOT(ISBLANK(case_depth))',
      otherwise:
        'Depth of the hard case not entered: ask whether the journal is hardened before grinding, and enter 0 if it is not.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(case_depth); 1 > 0; OR(case_depth <= 0 mm; case_left > 0 mm))',
      otherwise: 'Grinding goes through the hard case: have it hardened again, or build it up.',
      grade: 'caution',
    },
    {
      holds: '=strength_left >= 0.9',
      otherwise:
        'More than a tenth of the strength of the section goes: have the shaft looked at by someone licensed to judge it.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(case_depth); 1 > 0; case_depth >= 0 mm)',
      otherwise: 'The depth of the case is not below zero: enter 0 for a journal that is not hardened.',
      grade: 'error',
    },
    {
      holds: '=needed > 0 mm',
      otherwise: 'It cleans up at the size when new: it need not go to an undersize.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The worn journal is taken as a circle of its least diameter, half the indicator reading off the axis.',
    'A bearing of that undersize is to be had: the series lists what is usual, not what is in stock.',
  ],
  sources: [
    'Geometry: a circle about the true axis lies inside one of diameter d, e off, from d - 2 e down; indicator reading = 2 e',
    'The table of undersizes; each series there has its source',
  ],
  cautions: [
    wheel,
    centres,
    'Grinding burn and cracks: have a hardened or heavily loaded shaft crack-tested after grinding; follow the maker’s limits for undersize and hardness.',
    oldParts,
    lifting,
  ],
  examples: [
    {
      title: 'Journal 60.008 mm new, 0.25 under: 59.758 mm',
      source:
        'an engine maker’s published service data: journal 59.992 to 60.008 mm, 0.25 mm undersize 59.742 to 59.758 mm; the worn readings are ours',
      grade: 'seen',
      inputs: { new_size: '60.008 mm', least: '59.90 mm', runout: '0.03 mm', stock: '0.02 mm', series: 'mm' },
      expect: {
        undersize: { value: '0.25 mm', within: 1e-9 },
        ground_size: { value: '59.758 mm', within: 1e-9 },
      },
    },
    {
      title: 'Journal 60 mm new, 59.86 mm least, 0.03 mm runout, 0.02 mm stock: 0.25 under',
      source:
        'by hand: 59.86 - 0.03 - 0.02 = 59.81, 0.19 under new; next of 0.25, 0.50, 0.75, 1.00 mm (an engine maker’s workshop manual)',
      grade: 'recomputed',
      inputs: { new_size: '60 mm', least: '59.86 mm', runout: '0.03 mm', stock: '0.02 mm', series: 'mm' },
      expect: {
        undersize: { value: '0.25 mm', within: 1e-9 },
        ground_size: { value: '59.75 mm', within: 1e-9 },
        cleans_up_at: { value: '59.81 mm', within: 1e-9 },
      },
    },
    {
      title: 'Journal 2 in new, 1.9885 in least, 2 thou runout, 2 thou stock: 20 under',
      source: 'by hand: 15.5 thou under new is needed; next of 10, 20, 30 thou',
      grade: 'recomputed',
      inputs: { new_size: '2 in', least: '1.9885 in', runout: '2 thou', stock: '2 thou', series: 'inch' },
      expect: {
        undersize: { value: '20 thou', within: 1e-9 },
        ground_size: { value: '1.98 in', within: 1e-9 },
      },
    },
  ],
  drawing: ({ new_size, ground_size }) =>
    new_size === undefined || ground_size === undefined
      ? undefined
      : {
          width: 320,
          height: 240,
          shapes: [
            { kind: 'circle', x: 160, y: 120, r: 95, fill: 'none' },
            { kind: 'circle', x: 168, y: 122, r: 80, fill: 'section-a' },
            { kind: 'circle', x: 160, y: 120, r: 68, fill: 'none' },
            { kind: 'line', x1: 50, y1: 120, x2: 270, y2: 120, style: 'centre' },
            { kind: 'line', x1: 160, y1: 10, x2: 160, y2: 230, style: 'centre' },
            { kind: 'dimension', x1: 65, y1: 120, x2: 255, y2: 120, offset: -106, of: 'new_size' },
            { kind: 'dimension', x1: 92, y1: 120, x2: 228, y2: 120, offset: 84, of: 'ground_size' },
          ],
          exaggeration: 'wear and offset drawn larger than they are',
        },
});
