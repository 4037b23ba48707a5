import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { cutting, licensed, reaming } from '../record/hazards.ts';

/** What one plane of the pin holds; `at` is its distance from the large end. */
const plane = (at: string): string => `PI() / 4 * (large - ${at} * taper) ^ 2`;

export default defineCell({
  key: 'taper-pin',
  edition: 1,
  title: 'Taper pin',
  purpose:
    'A taper pin through collar and shaft: drill and steps before the reamer, how far the pin sinks for what the reamer takes, and the torque it holds.',
  group: 'machine work',
  inputs: [
    {
      name: 'large',
      label: 'large end of the pin',
      quantity: 'length',
      sensible: ['1.5 mm', '40 mm'],
      hint: 'Inch pins go by it: No. 0 0.156, 1 0.172, 2 0.193, 3 0.219, 4 0.250, 5 0.289, 6 0.341, 7 0.409, 8 0.492, 9 0.591, 10 0.706 in. Of a metric pin add its length over 50 to the size it is called by.',
    },
    { name: 'length', label: 'length of the pin', quantity: 'length', sensible: ['8 mm', '250 mm'] },
    {
      name: 'taper',
      label: 'taper on the diameter',
      quantity: 'number',
      default: '= 1 / 48',
      sensible: ['0.015', '0.03'],
      source: 'ASME B18.8.2-2000: 1/4 in in a foot; metric pins of ISO 2339:1986 have 1 / 50',
      hint: 'Inch pins 1/48, metric ones 1/50.',
    },
    {
      name: 'hub',
      label: 'outside of the collar or hub',
      quantity: 'length',
      sensible: ['5 mm', '300 mm'],
      hint: 'Across the pin: the length of the hole.',
    },
    { name: 'shaft', label: 'shaft diameter', quantity: 'length', sensible: ['3 mm', '200 mm'] },
    {
      name: 'left_to_ream',
      label: 'left for the reamer, on diameter',
      quantity: 'length',
      default: '0.1 mm',
      sensible: ['0.02 mm', '0.5 mm'],
      source: 'common practice, no source',
    },
    {
      name: 'stands_out',
      label: 'pin stands out at its large end by, as tried',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '50 mm'],
      hint: 'Pushed in by hand in the hole as reamed so far.',
    },
    {
      name: 'pin_yield',
      label: 'yield strength of the pin',
      quantity: 'pressure',
      optional: true,
      sensible: ['100 MPa', '1500 MPa'],
    },
    {
      name: 'torque',
      label: 'torque it must carry',
      quantity: 'torque',
      optional: true,
      sensible: ['0.01 N.m', '10000 N.m'],
    },
    {
      name: 'least_margin',
      label: 'least safety factor you accept',
      quantity: 'number',
      default: '2',
      sensible: ['1', '6'],
      source: 'common practice, no source; with shock or reversing load more',
    },
  ],
  outputs: [
    {
      name: 'small',
      label: 'small end of the pin',
      quantity: 'length',
      formula: '=large - length * taper',
      basis: 'model',
    },
    {
      name: 'hole_large',
      label: 'hole at the large side, reamed',
      quantity: 'length',
      formula: '=large - (length - hub) / 2 * taper',
      basis: 'model',
      hint: 'With the pin as far out on either side.',
    },
    {
      name: 'hole_small',
      label: 'hole at the small side, reamed',
      quantity: 'length',
      formula: '=hole_large - hub * taper',
      basis: 'model',
    },
    {
      name: 'drill_through',
      label: 'drill through at most',
      quantity: 'length',
      formula: '=hole_small - left_to_ream',
      basis: 'model',
      face: true,
    },
    {
      name: 'drill_half',
      label: 'then half way, at most',
      quantity: 'length',
      formula: '=hole_small + hub * taper / 2 - left_to_ream',
      basis: 'model',
      face: true,
      hint: 'From the large side to the middle of the hub: the reamer has half as much to take.',
    },
    {
      name: 'sinks',
      label: 'pin sinks for each hundredth of its large end reamed off',
      quantity: 'length',
      formula: '=0.01 * large / taper',
      basis: 'model',
    },
    {
      name: 'still_to_ream',
      label: 'still to ream, on diameter',
      quantity: 'length',
      formula: '=(stands_out - (length - hub) / 2) * taper',
      basis: 'model',
      face: true,
      hint: 'Until the pin stands out as far on either side; below zero it is too deep already.',
      limits: { lower: '=0 m' },
    },
    {
      name: 'sheared',
      label: 'section of the pin at both faces of the shaft',
      quantity: 'area',
      formula: `=${plane('((length - shaft) / 2)')} + ${plane('((length + shaft) / 2)')}`,
      basis: 'model',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'torque_held',
      label: 'torque at which it shears off',
      quantity: 'torque',
      formula: '=0.577 * pin_yield * sheared * shaft / 2',
      basis: 'model',
      face: true,
      hint: 'Shear strength as 0.577 of the yield strength.',
    },
    {
      name: 'margin',
      label: 'safety factor',
      quantity: 'number',
      formula: '=torque_held / torque',
      basis: 'model',
      limits: { lower: '=least_margin' },
    },
  ],
  validity: [
    {
      holds: '=AND(large > 0 m; length > 0 m; hub > 0 m; shaft > 0 m; taper > 0)',
      otherwise: 'All sizes are above zero.',
      grade: 'error',
    },
    {
      holds: '=length * taper < large',
      otherwise: 'The pin is longer than its taper: it would come to a point. Check its length.',
      grade: 'error',
    },
    {
      holds: '=IF(AND(taper > 0; length > 0 m); large - (length + hub) / 2 * taper > left_to_ream; 1 > 0)',
      otherwise:
        'Nothing is left to drill: the small side of the hole is no larger than what is left for the reamer.',
      grade: 'error',
    },
    { holds: '=shaft < hub', otherwise: 'The hub is larger than its shaft.', grade: 'error' },
    {
      holds: '=length >= hub',
      otherwise: 'The pin is shorter than the hub is across: it cannot be driven out again.',
      grade: 'caution',
    },
    {
      holds: '=large <= shaft / 3',
      otherwise: 'Thicker than a third of the shaft: it weakens the shaft more than it holds.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(torque); 1 > 0; torque > 0 N.m)',
      otherwise: 'The torque is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(pin_yield); 1 > 0; pin_yield > 0 Pa)',
      otherwise: 'A strength is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Drilled and reamed through both parts together, square to the shaft and through its axis.',
    'Sheared at both faces of the shaft alike, and at no other place; a pin that fits at one end only holds less.',
  ],
  sources: [
    'ASME B18.8.2-2000, taper pins: 0.250 in on the diameter in a foot; large ends by number, small end = large end - 0.02083 x length',
    'ISO 2339:1986 (IS 6688:2005), taper pins, unhardened: 1 : 50, called by the small end, 0.6 to 50 mm to h10, lengths 2 to 200 mm',
    "Shear as 0.577 of the yield strength: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 5-5",
  ],
  cautions: [
    'A taper reamer jams and snaps: turn it forward only, out often for chips, oil in steel.',
    'Drive a pin out from its small end with a punch that fits; a chipped punch or a hardened pin throws splinters: goggles.',
    reaming,
    cutting,
    licensed,
  ],
  examples: [
    {
      title: 'No. 5 inch pin, 2 in long',
      source:
        'ASME B18.8.2-2000, as a handbook of the trade prints it: large end 0.289 in; small end by its rule, large end - length x 0.02083 = 0.2473 in',
      grade: 'seen',
      inputs: { large: '0.289 in', length: '2 in', hub: '1.75 in', shaft: '1 in' },
      expect: {
        small: { value: '0.2473 in', within: '1e-4 in' },
        hole_small: { value: '0.24994 in', within: '1e-5 in' },
        sinks: { value: '0.13872 in', within: '1e-5 in' },
      },
    },
    {
      title: 'Metric pin 8 x 60, 1 in 50: torque, and what is still to ream',
      source:
        'recomputed by coordinates: large end 9.2 mm; 8.85 and 8.35 mm where 25 mm of shaft begins and ends; 61.51 + 54.76 mm2 x 0.577 x 300 MPa x 12.5 mm',
      grade: 'recomputed',
      inputs: {
        large: '9.2 mm',
        length: '60 mm',
        taper: '= 1 / 50',
        hub: '50 mm',
        shaft: '25 mm',
        stands_out: '12 mm',
        pin_yield: '300 MPa',
        torque: '100 N.m',
      },
      expect: {
        small: { value: '8 mm', within: 1e-9 },
        still_to_ream: { value: '0.14 mm', within: 1e-9 },
        sheared: { value: '116.27 mm2', within: 1e-3 },
        torque_held: { value: '251.6 N.m', within: 1e-3 },
      },
    },
  ],
  drawing: ({ large, small, length, hub, shaft }) => {
    if (
      large === undefined ||
      small === undefined ||
      length === undefined ||
      hub === undefined ||
      shaft === undefined
    )
      return undefined;
    if (!(small > 0 && large > small && length > 0 && hub > shaft && shaft > 0)) return undefined;
    const scale = 140 / Math.max(hub, length);
    if (!Number.isFinite(scale)) return undefined;
    const [x, y] = [130, 104];
    const half = (length * scale) / 2;
    // A slow taper is drawn as 1 in 8, so that it is seen.
    const [wide, thin] = [(large * scale) / 2 + half / 16, Math.max(2, (small * scale) / 2 - half / 16)];
    return {
      width: 300,
      height: 215,
      shapes: [
        annulus(x, y, (hub * scale) / 2, (shaft * scale) / 2, 'section-b'),
        { kind: 'circle', x, y, r: (shaft * scale) / 2, fill: 'section-a' },
        {
          kind: 'path',
          d: `M${x - wide} ${y - half}L${x + wide} ${y - half}L${x + thin} ${y + half}L${x - thin} ${y + half}Z`,
          fill: 'paper',
        },
        { kind: 'line', x1: x, y1: y - half - 16, x2: x, y2: y + half + 16, style: 'centre' },
        { kind: 'line', x1: x - 92, y1: y, x2: x + 92, y2: y, style: 'centre' },
        { kind: 'dimension', x1: x, y1: y - half, x2: x, y2: y + half, offset: -100, of: 'length' },
        {
          kind: 'dimension',
          x1: x,
          y1: y - (hub * scale) / 2,
          x2: x,
          y2: y + (hub * scale) / 2,
          offset: -132,
          of: 'hub',
        },
      ],
      exaggeration: 'taper drawn large',
    };
  },
});
