import { defineCell } from '../record/cell.ts';
import { pressGuard, pressStop } from '../record/hazards.ts';

export default defineCell({
  key: 'lead-chamfer',
  edition: 1,
  title: 'Lead chamfer that enters',
  purpose: 'Length of lead chamfer whose small end enters the bore, so that a pressed part starts straight.',
  group: 'bore and shaft',
  inputs: [
    {
      name: 'outside',
      label: 'outside of the part that goes in',
      quantity: 'length',
      sensible: ['3 mm', '1 m'],
    },
    { name: 'bore', label: 'bore it goes into', quantity: 'length', sensible: ['3 mm', '1 m'] },
    {
      name: 'chamfer_length',
      label: 'length of the chamfer',
      quantity: 'length',
      sensible: ['0.2 mm', '20 mm'],
    },
    {
      name: 'chamfer_angle',
      label: 'angle of the chamfer to the axis',
      quantity: 'angle',
      default: '15 deg',
      sensible: ['5 deg', '45 deg'],
      source: 'common practice, no source: 15 to 20 degrees',
    },
    {
      name: 'entry_wanted',
      label: 'entry clearance wanted',
      quantity: 'length',
      default: '0.1 mm',
      sensible: ['0 mm', '2 mm'],
      source: 'common practice, no source',
    },
  ],
  outputs: [
    {
      name: 'small_end',
      label: 'small end of the chamfer',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=outside - 2 * chamfer_length * TAN(chamfer_angle)',
    },
    {
      name: 'entry',
      label: 'entry clearance',
      quantity: 'length',
      basis: 'geometry',
      formula: '=bore - small_end',
      face: true,
      display: { in: 'thou', mm: 'mm' },
      limits: { lower: '=0 mm' },
      hint: 'On the diameter. Below zero: the part does not enter.',
    },
    {
      name: 'least_length',
      label: 'least length for the entry wanted',
      quantity: 'length',
      basis: 'geometry',
      formula: '=MAX(0 mm; (outside - bore + entry_wanted) / 2 / TAN(chamfer_angle))',
      face: true,
    },
    {
      name: 'bearing_starts',
      label: 'grips after entering by',
      quantity: 'length',
      basis: 'geometry',
      formula: '=MAX(0 mm; chamfer_length - MAX(0 mm; (outside - bore) / 2 / TAN(chamfer_angle)))',
      hint: 'Length that goes in before metal touches.',
    },
  ],
  validity: [
    { holds: '=AND(outside > 0 mm; bore > 0 mm)', otherwise: 'A diameter is above zero.', grade: 'error' },
    { holds: '=chamfer_length >= 0 mm', otherwise: 'A chamfer is not shorter than nothing.', grade: 'error' },
    {
      holds: '=AND(chamfer_angle > 0 deg; chamfer_angle < 90 deg)',
      otherwise: 'The angle of the chamfer lies between 0 and 90 degrees to the axis.',
      grade: 'error',
    },
    {
      holds: '=outside - 2 * chamfer_length * TAN(chamfer_angle) > 0 mm',
      otherwise: 'Nothing is left of the part at the small end: the chamfer is too long or too steep.',
      grade: 'error',
    },
    {
      holds: '=chamfer_angle <= 30 deg',
      otherwise:
        'A chamfer steeper than about 30 degrees shaves metal instead of leading: take a longer, flatter one.',
      grade: 'caution',
    },
    {
      holds: '=outside < 1.02 * bore',
      otherwise: 'The part is more than a fiftieth larger than the bore: look at both sizes.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Bush, sleeve, gear on its seat or pin alike: the chamfer is on the part that goes in. The edge of the bore is broken but not chamfered; a chamfer there adds to the entry.',
    'The chamfer carries nothing and is not counted in the length of the fit.',
  ],
  sources: ['Geometry', '15 to 20 degrees, entry from a tenth of a millimetre: common practice, no source'],
  cautions: [
    'A part that starts crooked can burst out under the ram: stop, take it out, never straighten it under load.',
    pressGuard,
    pressStop,
  ],
  examples: [
    {
      title: 'Chamfer 1.0 mm x 45 degrees: the diameter changes by 2.0 mm',
      source:
        'a published table of chamfers: 1.0 x 45 degrees, 2.0 mm on the diameter; outside and bore are ours',
      grade: 'seen',
      inputs: { outside: '20 mm', bore: '19.98 mm', chamfer_length: '1.0 mm', chamfer_angle: '45 deg' },
      expect: { small_end: { value: '18 mm', within: 1e-9 } },
    },
    {
      title: 'Bush 2.2790 in into 2.2760 in, chamfer 1/16 in at 15 degrees',
      source: 'second way: right triangle by its sides, tan 15 = 2 - sqrt 3',
      grade: 'recomputed',
      inputs: { outside: '2.2790 in', bore: '2.2760 in', chamfer_length: '1/16 in', entry_wanted: '4 thou' },
      expect: {
        entry: { value: '30.4936490538904 thou', within: 1e-9 },
        least_length: { value: '13.0621778264911 thou', within: 1e-9 },
      },
    },
  ],
  drawing: ({ outside, bore }) =>
    outside === undefined || bore === undefined
      ? undefined
      : {
          width: 320,
          height: 220,
          shapes: [
            { kind: 'rect', x: 20, y: 120, width: 62, height: 90, fill: 'section-a' },
            { kind: 'rect', x: 238, y: 120, width: 62, height: 90, fill: 'section-a' },
            { kind: 'path', d: 'M76 20 L76 90 L92 134 L120 134 L120 20 Z', fill: 'section-b' },
            { kind: 'path', d: 'M244 20 L244 90 L228 134 L200 134 L200 20 Z', fill: 'section-b' },
            { kind: 'line', x1: 160, y1: 10, x2: 160, y2: 215, style: 'centre' },
            { kind: 'dimension', x1: 76, y1: 30, x2: 244, y2: 30, offset: 14, of: 'outside' },
            { kind: 'dimension', x1: 92, y1: 134, x2: 228, y2: 134, offset: -14, of: 'small_end' },
            { kind: 'dimension', x1: 82, y1: 195, x2: 238, y2: 195, offset: 0, of: 'bore' },
            { kind: 'dimension', x1: 244, y1: 90, x2: 244, y2: 134, offset: 30, of: 'chamfer_length' },
          ],
          exaggeration: 'interference and chamfer drawn larger than they are',
        },
});
