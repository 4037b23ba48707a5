import { defineCell } from '../record/cell.ts';
import { broaching, pressGuard } from '../record/hazards.ts';

export default defineCell({
  key: 'push-mandrel',
  edition: 1,
  title: 'Push mandrel for a broach',
  purpose:
    'The bar that follows a broach through its guide, made to size for a bore beyond the set: width, height and length, and whether it bears the push as a column.',
  group: 'machine work',
  inputs: [
    {
      name: 'slot_width',
      label: 'slot of the guide',
      quantity: 'length',
      sensible: ['1 mm', '60 mm'],
      hint: '= guide.slot_width',
    },
    {
      name: 'first_tooth',
      label: 'back of the broach to its first tooth',
      quantity: 'length',
      sensible: ['2 mm', '150 mm'],
      hint: 'The mandrel stays below it, or it touches the floor just cut.',
    },
    {
      name: 'clearance',
      label: 'clearance of the mandrel, in width and in height',
      quantity: 'length',
      default: '0.1 mm',
      sensible: ['0.02 mm', '1 mm'],
      source: 'common practice, no source: it falls through by its own weight',
    },
    { name: 'part_length', label: 'length of the part', quantity: 'length', sensible: ['3 mm', '600 mm'] },
    {
      name: 'collar',
      label: 'guide stands out above the part by',
      quantity: 'length',
      default: '0 mm',
      sensible: ['0 mm', '100 mm'],
      source: 'a guide that ends level with the part',
    },
    {
      name: 'below',
      label: 'broach pushed past the far end by',
      quantity: 'length',
      default: '5 mm',
      sensible: ['0 mm', '50 mm'],
      source: 'common practice, no source: until it drops',
    },
    { name: 'force', label: 'force to push the broach', quantity: 'force', hint: '= push.force' },
    {
      name: 'steel',
      label: 'material of the mandrel',
      record: 'material',
      hint: 'Softer than the broach, so that it marks first.',
    },
    {
      name: 'least_margin',
      label: 'least safety factor you accept',
      quantity: 'number',
      default: '3',
      sensible: ['1.5', '10'],
      source: 'common practice, no source: a column lets go without a sign',
    },
  ],
  outputs: [
    {
      name: 'width',
      label: 'width of the mandrel',
      quantity: 'length',
      formula: '=slot_width - clearance',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'height',
      label: 'height of the mandrel',
      quantity: 'length',
      formula: '=first_tooth - clearance',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'length',
      label: 'length of the mandrel, at least',
      quantity: 'length',
      formula: '=part_length + collar + below',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'section',
      label: 'section',
      quantity: 'area',
      formula: '=width * height',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'slenderness',
      label: 'slenderness: length over radius of gyration',
      quantity: 'number',
      formula: '=length * SQRT(12) / MIN(width; height)',
      basis: 'geometry',
      hint: 'The radius of gyration of a bar is its thinner side over the root of 12.',
    },
    {
      name: 'slender_from',
      label: 'slender from',
      quantity: 'number',
      formula: '=SQRT(2 * PI() ^ 2 * steel.E / steel.yield)',
      basis: 'model',
      hint: 'Above it the bar bows out while it is elastic still.',
    },
    {
      name: 'column_stress',
      label: 'stress at which it bows',
      quantity: 'pressure',
      formula:
        '=IF(slenderness > slender_from; PI() ^ 2 * steel.E / slenderness ^ 2; steel.yield - (steel.yield * slenderness / (2 * PI())) ^ 2 / steel.E)',
      basis: 'model',
    },
    {
      name: 'holds',
      label: 'push it bears',
      quantity: 'force',
      formula: '=section * column_stress',
      basis: 'model',
    },
    {
      name: 'margin',
      label: 'push it bears over the force',
      quantity: 'number',
      formula: '=holds / force',
      basis: 'model',
      face: true,
      limits: { lower: '=least_margin' },
    },
  ],
  validity: [
    {
      holds:
        '=AND(slot_width > 0 m; first_tooth > 0 m; part_length > 0 m; clearance > 0 m; collar >= 0 m; below >= 0 m)',
      otherwise: 'Sizes and clearance are above zero.',
      grade: 'error',
    },
    {
      holds: '=AND(clearance < slot_width; clearance < first_tooth)',
      otherwise: 'The clearance leaves nothing of the mandrel.',
      grade: 'error',
    },
    { holds: '=force > 0 N', otherwise: 'The force is above zero.', grade: 'error' },
    {
      holds: '=slenderness <= 120',
      otherwise:
        'Long and thin: push in two strokes with a short mandrel and then a longer one, so that little of it stands free.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Both ends free to tilt and its whole length free, as it is before it enters the guide; flat, square ends do a little better.',
    'Pushed in its middle: off centre it bows far sooner.',
  ],
  sources: [
    "Columns, Euler above and J. B. Johnson below sqrt(2 pi^2 E / Sy), ends free to tilt: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 4-12 and 4-13",
    'Clearance, length and factor: common practice, no source',
  ],
  cautions: [
    'A mandrel that bows springs out sideways with all the force of the press: screen it, push square, and stop when it leans.',
    pressGuard,
    broaching,
  ],
  examples: [
    {
      title: 'A link of 75 ksi steel, 30 Mpsi: where it becomes slender',
      source:
        'Shigley 9e (2011), example 4-19 (from memory): 88.9; a bar of 1/2 in, 8 in long, 55.43, bows at 75 - (75000 x 55.43 / 2 pi)^2 / 30e6 = 60.41 ksi',
      grade: 'memory',
      inputs: {
        slot_width: '0.51 in',
        first_tooth: '0.76 in',
        clearance: '0.01 in',
        part_length: '7.8 in',
        below: '0.2 in',
        force: '5000 lbf',
        steel: { E: '30 Mpsi', yield: '75 ksi' },
      },
      expect: {
        slender_from: { value: '88.9', within: '0.05' },
        length: { value: '8 in', within: 1e-9 },
        slenderness: { value: '55.4256', within: 1e-5 },
        column_stress: { value: '60.41 ksi', within: '0.01 ksi' },
        margin: { value: '4.5308', within: 1e-3 },
      },
    },
    {
      title: 'A thin one, 4 x 6 mm and 120 mm long',
      source:
        'recomputed by energy: pi^2 E I / L^2 with I = 6 x 4^3 / 12 = 32 mm4, E 206 GPa: 4518 N; over 3 kN',
      grade: 'recomputed',
      inputs: {
        slot_width: '4.1 mm',
        first_tooth: '6.1 mm',
        part_length: '115 mm',
        force: '3 kN',
        steel: { E: '206 GPa', yield: '600 MPa' },
      },
      expect: {
        holds: { value: '4518.1 N', within: 1e-3 },
        margin: { value: '1.506', within: 1e-3 },
      },
    },
    {
      title: 'Steel of 150 ksi, 30 Mpsi: slender from 62.83',
      source:
        'Faires, Design of Machine Elements, solutions, problem 334(c): (2 pi^2 x 30e6 / 150e3)^(1/2) = 62.83; a bar of 1/2 x 1 in and 5 in long by hand, 34.641, bows at 150 - (150000 x 34.641 / 2 pi)^2 / 30e6 = 127.20 ksi',
      grade: 'seen',
      inputs: {
        slot_width: '0.51 in',
        first_tooth: '1.01 in',
        clearance: '0.01 in',
        part_length: '4.8 in',
        below: '0.2 in',
        force: '5000 lbf',
        steel: { E: '30 Mpsi', yield: '150 ksi' },
      },
      expect: {
        slender_from: { value: '62.83', within: '0.005' },
        column_stress: { value: '127.20 ksi', within: '0.01 ksi' },
      },
    },
  ],
  drawing: ({ width, height, length }) => {
    if (width === undefined || height === undefined || length === undefined) return undefined;
    if (!(width > 0 && height > 0 && length > 0)) return undefined;
    const thick = Math.max(width, height);
    if (!Number.isFinite(thick) || !Number.isFinite(length)) return undefined;
    // Broken off along its length, its section beside it to scale.
    const scale = 56 / thick;
    const [w, h] = [width * scale, height * scale];
    const [x, y] = [40, 88];
    return {
      width: 320,
      height: 190,
      shapes: [
        { kind: 'rect', x, y: y - h / 2, width: 130, height: h, fill: 'none' },
        { kind: 'line', x1: x - 12, y1: y, x2: x + 142, y2: y, style: 'centre' },
        { kind: 'rect', x: 212 - w / 2, y: y - h / 2, width: w, height: h, fill: 'section-a' },
        { kind: 'dimension', x1: x, y1: y + h / 2, x2: x + 130, y2: y + h / 2, offset: -26, of: 'length' },
        {
          kind: 'dimension',
          x1: 212 - w / 2,
          y1: y - h / 2,
          x2: 212 + w / 2,
          y2: y - h / 2,
          offset: 20,
          of: 'width',
        },
        {
          kind: 'dimension',
          x1: 212 + w / 2,
          y1: y - h / 2,
          x2: 212 + w / 2,
          y2: y + h / 2,
          offset: 34,
          of: 'height',
        },
      ],
      exaggeration: 'length not to scale',
    };
  },
});
