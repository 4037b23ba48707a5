import { defineCell } from '../record/cell.ts';
import { centres, lifting, oldParts, wheel } from '../record/hazards.ts';

export default defineCell({
  key: 'build-up',
  edition: 1,
  title: 'Build-up and its undercut',
  purpose: 'How far to undercut a worn shaft before plating, spraying or welding, and how large to build it.',
  group: 'bore and shaft',
  inputs: [
    { name: 'finished', label: 'size wanted', quantity: 'length', sensible: ['5 mm', '1 m'] },
    {
      name: 'least',
      label: 'least diameter as found',
      quantity: 'length',
      role: 'measured',
      sensible: ['5 mm', '1 m'],
    },
    {
      name: 'runout',
      label: 'total indicator reading of the worn place',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '2 mm'],
    },
    {
      name: 'clean_cut',
      label: 'to come off below the deepest wear, on the diameter',
      quantity: 'length',
      sensible: ['0 mm', '2 mm'],
      hint: 'Down to clean sound metal.',
    },
    {
      name: 'least_deposit',
      label: 'least thickness of deposit when finished',
      quantity: 'length',
      sensible: ['0 mm', '10 mm'],
      hint: 'On the radius, as the supplier of the process asks.',
    },
    {
      name: 'finishing',
      label: 'finishing stock on the deposit, on the diameter',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
    },
  ],
  outputs: [
    {
      name: 'undercut',
      label: 'undercut to',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=MIN(finished - 2 * least_deposit; least - runout - clean_cut)',
      face: true,
    },
    {
      name: 'as_built',
      label: 'build to',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=finished + finishing',
      face: true,
    },
    {
      name: 'deposit',
      label: 'deposit when finished, on the radius',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(finished - undercut) / 2',
      face: true,
    },
    {
      name: 'laid_on',
      label: 'to lay on, on the radius',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(as_built - undercut) / 2',
    },
    {
      name: 'comes_off',
      label: 'undercut takes off, on the radius',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(least - undercut) / 2',
    },
    {
      name: 'strength_left',
      label: 'strength in bending and torsion left',
      quantity: 'number',
      basis: 'model',
      formula: '=(undercut / finished) ^ 3',
      display: { in: '%', mm: '%' },
      hint: 'By the section under the deposit alone: a deposit is not counted on to carry.',
    },
  ],
  validity: [
    { holds: '=AND(finished > 0 mm; least > 0 mm)', otherwise: 'A diameter is above zero.', grade: 'error' },
    {
      holds: '=runout >= 0 mm',
      otherwise: 'An indicator reading over a turn is not below zero.',
      grade: 'caution',
    },
    {
      holds: '=AND(clean_cut >= 0 mm; least_deposit >= 0 mm; finishing >= 0 mm)',
      otherwise: 'Cut, deposit and stock are not below zero.',
      grade: 'error',
    },
    {
      holds: '=MIN(finished - 2 * least_deposit; least - runout - clean_cut) > 0 mm',
      otherwise: 'Nothing is left of the shaft under that deposit: a thinner deposit, or a new shaft.',
      grade: 'error',
    },
    {
      holds: '=strength_left >= 0.8',
      otherwise:
        'The undercut takes more than a fifth of the strength of the section: a new shaft or a sleeve may be the better repair.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The deposit is even all round and along; the corners of the undercut are rounded, never sharp.',
    'Least and greatest thickness, bond and hardness are the process supplier’s to say.',
  ],
  sources: ['Geometry', 'A deposit is not counted as strength: common practice, no source'],
  cautions: [
    'Grit blasting before spraying: never with sand, whose dust scars the lungs; helmet with its own air, and extraction.',
    'Spraying and welding: metal fume and dust, arc light, hot work; welding a shaft can crack or bend it.',
    'Fume of chromium and nickel from spraying or welding such deposits causes cancer: extraction and breathing protection as the supplier’s sheet and local rules say.',
    'Degreasing: keep solvents off skin and out of the air, and every trace of chlorinated ones away from arc and flame, where they turn into poison gas.',
    'Chromium plating baths hold chromium(VI), which is poisonous and causes cancer: for licensed platers only.',
    'A high-strength steel may crack from hydrogen after plating: the plater bakes it; say what the steel is.',
    'Do not build up a part whose breaking can hurt someone without licensed advice.',
    centres,
    wheel,
    oldParts,
    lifting,
  ],
  examples: [
    {
      title: 'Propeller shaft of 75 mm, undercut 1.25 mm deep',
      source:
        'a spraying supplier’s published instructions: 1.25 mm deep for shafts of 50 to 100 mm; shaft and stock are ours',
      grade: 'seen',
      inputs: {
        finished: '75 mm',
        least: '74.8 mm',
        runout: '0.05 mm',
        clean_cut: '0.1 mm',
        least_deposit: '1.25 mm',
        finishing: '0.8 mm',
      },
      expect: { deposit: { value: '1.25 mm', within: 1e-9 }, undercut: { value: '72.5 mm', within: 1e-9 } },
    },
    {
      title: 'Shaft 50 mm, worn to 49.70 mm, 0.06 mm runout, 0.10 mm clean cut, 0.5 mm deposit, 0.6 mm stock',
      source: 'by hand: least of 50 - 1.0 = 49.00 and 49.70 - 0.06 - 0.10 = 49.54',
      grade: 'recomputed',
      inputs: {
        finished: '50 mm',
        least: '49.70 mm',
        runout: '0.06 mm',
        clean_cut: '0.10 mm',
        least_deposit: '0.5 mm',
        finishing: '0.6 mm',
      },
      expect: {
        undercut: { value: '49 mm', within: 1e-9 },
        as_built: { value: '50.6 mm', within: 1e-9 },
        deposit: { value: '0.5 mm', within: 1e-9 },
        laid_on: { value: '0.8 mm', within: 1e-9 },
      },
    },
  ],
  drawing: ({ finished, undercut, as_built }) =>
    finished === undefined || undercut === undefined || as_built === undefined
      ? undefined
      : {
          width: 340,
          height: 200,
          shapes: [
            {
              kind: 'path',
              d: 'M20 50 L90 50 L100 68 L240 68 L250 50 L320 50 L320 150 L250 150 L240 132 L100 132 L90 150 L20 150 Z',
              fill: 'section-a',
            },
            { kind: 'path', d: 'M88 44 L252 44 L250 50 L240 68 L100 68 L90 50 Z', fill: 'section-b' },
            { kind: 'path', d: 'M88 156 L252 156 L250 150 L240 132 L100 132 L90 150 Z', fill: 'section-b' },
            { kind: 'line', x1: 10, y1: 100, x2: 330, y2: 100, style: 'centre' },
            { kind: 'dimension', x1: 130, y1: 68, x2: 130, y2: 132, offset: 0, of: 'undercut' },
            { kind: 'dimension', x1: 210, y1: 44, x2: 210, y2: 156, offset: 0, of: 'as_built' },
            { kind: 'dimension', x1: 300, y1: 50, x2: 300, y2: 150, offset: 0, of: 'finished' },
          ],
          exaggeration: 'deposit drawn thicker than it is',
        },
});
