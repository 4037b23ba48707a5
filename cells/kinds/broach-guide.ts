import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { broaching } from '../record/hazards.ts';

export default defineCell({
  key: 'broach-guide',
  edition: 1,
  title: 'Guide bush for a broach',
  purpose:
    'A guide bush and push mandrel made to size for a bore beyond the set: outside, slot, web, the shims to full depth and how many passes.',
  group: 'machine work',
  inputs: [
    { name: 'bore', label: 'bore of the part', quantity: 'length', sensible: ['5 mm', '500 mm'] },
    {
      name: 'guide_clearance',
      label: 'clearance of the guide in the bore',
      quantity: 'length',
      default: '0.025 mm',
      sensible: ['0.005 mm', '0.2 mm'],
      source: 'common practice, no source: a slip fit that does not rock, about a thou',
    },
    {
      name: 'broach_width',
      label: 'width of the broach',
      quantity: 'length',
      sensible: ['1 mm', '60 mm'],
      hint: 'Measured over its body.',
    },
    {
      name: 'slot_clearance',
      label: 'clearance of the broach in its slot',
      quantity: 'length',
      default: '0.05 mm',
      sensible: ['0.01 mm', '0.2 mm'],
      source: 'common practice, no source: it slides by its own weight, and no more',
    },
    {
      name: 'first_tooth',
      label: 'back of the broach to its first tooth',
      quantity: 'length',
      sensible: ['2 mm', '150 mm'],
    },
    {
      name: 'last_tooth',
      label: 'back of the broach to its last tooth',
      quantity: 'length',
      sensible: ['2 mm', '150 mm'],
    },
    {
      name: 'crown_depth',
      label: 'depth of the groove from the crown',
      quantity: 'length',
      sensible: ['0.1 mm', '50 mm'],
      hint: '= groove.crown_depth',
    },
    {
      name: 'shim',
      label: 'thickness of one shim',
      quantity: 'length',
      default: '=last_tooth - first_tooth',
      sensible: ['0.05 mm', '5 mm'],
      source: 'what the broach takes in one pass: a thicker one overloads its first teeth',
    },
    {
      name: 'least_web',
      label: 'least web wanted under the slot',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '100 mm'],
    },
  ],
  outputs: [
    {
      name: 'guide_outside',
      label: 'outside of the guide bush',
      quantity: 'length',
      formula: '=bore - guide_clearance',
      basis: 'geometry',
      ofPart: true,
      face: true,
    },
    {
      name: 'slot_width',
      label: 'width of its slot',
      quantity: 'length',
      formula: '=broach_width + slot_clearance',
      basis: 'geometry',
      ofPart: true,
      face: true,
    },
    {
      name: 'slot_depth',
      label: 'depth of its slot, from its crown',
      quantity: 'length',
      formula: '=first_tooth - guide_clearance',
      basis: 'geometry',
      ofPart: true,
      face: true,
      hint: 'The first tooth then just touches the crown of the bore, the guide pressed to the far side.',
    },
    {
      name: 'web',
      label: 'web left under the slot',
      quantity: 'length',
      formula: '=guide_outside - slot_depth',
      basis: 'geometry',
      limits: { lower: '=least_web' },
    },
    {
      name: 'first_cut',
      label: 'cut by the first pass, without a shim',
      quantity: 'length',
      formula: '=web + last_tooth - bore',
      basis: 'geometry',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'shims_total',
      label: 'shims behind the broach at full depth',
      quantity: 'length',
      formula: '=MAX(0 m; crown_depth - first_cut)',
      basis: 'geometry',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'passes',
      label: 'passes',
      quantity: 'number',
      formula: '=1 + ROUNDUP(ROUND(shims_total / shim; 6); 0)',
      basis: 'geometry',
      held: true,
      face: true,
      hint: 'The last with as much shim as is left: measure before it.',
    },
    {
      name: 'last_shim',
      label: 'last shim',
      quantity: 'length',
      formula: '=IF(passes > 1; shims_total - (passes - 2) * shim; 0 m)',
      basis: 'geometry',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'mandrel',
      label: 'push mandrel, at most',
      quantity: 'length',
      formula: '=MIN(broach_width; first_tooth)',
      basis: 'geometry',
      hint: 'Across its corners: it follows the broach through the slot, and is longer than the part.',
    },
  ],
  validity: [
    {
      holds: '=AND(bore > 0 m; broach_width > 0 m; first_tooth > 0 m; crown_depth > 0 m)',
      otherwise: 'All sizes are above zero.',
      grade: 'error',
    },
    {
      holds: '=last_tooth > first_tooth',
      otherwise: 'The last tooth stands higher than the first: change them over.',
      grade: 'error',
    },
    {
      holds: '=first_tooth > guide_clearance',
      otherwise: 'The first tooth stands no higher than the clearance of the guide: check both.',
      grade: 'error',
    },
    {
      holds: '=crown_depth >= 0.999999 * (last_tooth - first_tooth)',
      otherwise:
        'The first pass alone cuts deeper than the groove: make the slot deeper by the difference, so that the broach lies lower.',
      grade: 'caution',
    },
    { holds: '=shim > 0 m', otherwise: 'A shim has a thickness above zero.', grade: 'error' },
    {
      holds: '=AND(guide_clearance > 0 m; slot_clearance > 0 m; guide_clearance < bore)',
      otherwise: 'Without clearance the guide or the broach sticks.',
      grade: 'error',
    },
    {
      holds: '=first_tooth < bore - guide_clearance',
      otherwise: 'The broach is as high as the bore: it does not go in with a guide.',
      grade: 'error',
    },
    {
      holds: '=shim <= 1.05 * (last_tooth - first_tooth)',
      otherwise:
        'A shim thicker than the broach takes in one pass puts its whole excess on the first tooth: it breaks.',
      grade: 'caution',
    },
    {
      holds: '=broach_width + slot_clearance <= 0.5 * bore',
      otherwise: 'The slot takes more than half the guide: little is left to hold it straight.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The cut holds the broach’s back to the floor of the slot, and the guide to the far side of the bore.',
    'The guide has a collar or is longer than the part, and slot and bore axis are parallel.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Geometry of broach, guide and bore',
    'Clearances: common practice, no source',
  ],
  cautions: [
    'Back the broach out after each pass; no fingers in the slot.',
    'Support the part right round the bore, close under it: a thin one bursts or closes in.',
    broaching,
  ],
  examples: [
    {
      title: 'Broach 3/16 in, teeth 0.300 to 0.340 in, in a bore of 1.600 in; 0.095 in from the crown',
      source:
        'by hand: guide 1.599, slot 0.299 from its crown, web 1.300; first pass 1.300 + 0.340 - 1.600 = 0.040; 0.055 of shims, two of 0.040 at most: 3 passes, the last shim 0.015 in',
      grade: 'recomputed',
      inputs: {
        bore: '1.600 in',
        guide_clearance: '0.001 in',
        broach_width: '0.1875 in',
        slot_clearance: '0.002 in',
        first_tooth: '0.300 in',
        last_tooth: '0.340 in',
        crown_depth: '0.095 in',
      },
      expect: {
        guide_outside: { value: '1.599 in', within: '1e-9 in' },
        slot_depth: { value: '0.299 in', within: '1e-9 in' },
        web: { value: '1.300 in', within: '1e-9 in' },
        first_cut: { value: '0.040 in', within: '1e-9 in' },
        shims_total: { value: '0.055 in', within: '1e-9 in' },
        passes: { value: '3', within: 1e-9 },
        last_shim: { value: '0.015 in', within: '1e-9 in' },
      },
    },
    {
      title: 'The same, 0.040 in deep: one pass, no shim',
      source: 'by hand: the first pass cuts 0.040 in',
      grade: 'recomputed',
      inputs: {
        bore: '1.600 in',
        guide_clearance: '0.001 in',
        broach_width: '0.1875 in',
        slot_clearance: '0.002 in',
        first_tooth: '0.300 in',
        last_tooth: '0.340 in',
        crown_depth: '0.040 in',
      },
      expect: {
        shims_total: { value: '0 in', within: '1e-9 in' },
        passes: { value: '1', within: 1e-9 },
      },
    },
  ],
  drawing: ({ bore, broach_width: width, first_tooth: first, guide_outside: guide }) => {
    if (bore === undefined || width === undefined || first === undefined || guide === undefined)
      return undefined;
    if (
      !(width > 0 && guide > width && first > 0 && first < guide && bore >= guide) ||
      !Number.isFinite(bore)
    )
      return undefined;
    const scale = 170 / bore;
    const [x, y] = [160, 118];
    return {
      width: 320,
      height: 240,
      shapes: [
        annulus(x, y, 104, 85, 'section-b'),
        { kind: 'circle', x, y, r: (guide * scale) / 2, fill: 'section-a' },
        {
          kind: 'rect',
          x: x - (width * scale) / 2,
          y: y - (guide * scale) / 2 - 1,
          width: width * scale,
          height: first * scale + 1,
          fill: 'paper',
        },
        { kind: 'line', x1: 45, y1: y, x2: 275, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 6, x2: x, y2: 230, style: 'centre' },
        {
          kind: 'dimension',
          x1: x - (guide * scale) / 2,
          y1: y,
          x2: x + (guide * scale) / 2,
          y2: y,
          offset: 114,
          of: 'guide_outside',
        },
      ],
    };
  },
});
