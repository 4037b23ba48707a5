import { defineCell } from '../record/cell.ts';
import { cutting, lifting, oldParts, powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'line-bore-shift',
  edition: 1,
  title: 'Line-bored housing: shift and tilt',
  purpose: 'What a shifted line bore does to centre distance, alignment and backlash.',
  group: 'bore and shaft',
  inputs: [
    {
      name: 'centre_distance',
      label: 'centre distance as it was',
      quantity: 'length',
      sensible: ['10 mm', '5 m'],
    },
    {
      name: 'span',
      label: 'distance between the two bores',
      quantity: 'length',
      sensible: ['10 mm', '10 m'],
    },
    {
      name: 'toward_near',
      label: 'near bore moved toward the other shaft by',
      quantity: 'length',
      sensible: ['-5 mm', '5 mm'],
      hint: 'Below zero where it moved away.',
    },
    {
      name: 'toward_far',
      label: 'far bore moved toward the other shaft by',
      quantity: 'length',
      sensible: ['-5 mm', '5 mm'],
    },
    {
      name: 'across_near',
      label: 'near bore moved across by',
      quantity: 'length',
      sensible: ['-5 mm', '5 mm'],
      hint: 'Square to the line of centres; the same side counts positive at both bores.',
    },
    {
      name: 'across_far',
      label: 'far bore moved across by',
      quantity: 'length',
      sensible: ['-5 mm', '5 mm'],
    },
    {
      name: 'face_width',
      label: 'width over which alignment counts',
      quantity: 'length',
      sensible: ['1 mm', '2 m'],
      hint: 'Face of the gear, or length of the bearing.',
    },
    {
      name: 'pressure_angle',
      label: 'pressure angle',
      quantity: 'angle',
      counts: 'aside',
      optional: true,
      sensible: ['14.5 deg', '30 deg'],
      hint: 'Of the gears: 20 degrees by ISO 53, in old ones often 14.5. Ask, or measure over pins; a wrong one is a wrong backlash.',
    },
    {
      name: 'backlash',
      label: 'backlash there is, before boring',
      quantity: 'length',
      role: 'measured',
      optional: true,
      sensible: ['0 mm', '2 mm'],
      hint: 'At the pitch circle, least over a turn.',
    },
    {
      name: 'least_backlash',
      label: 'least backlash wanted',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '2 mm'],
    },
  ],
  outputs: [
    {
      name: 'new_distance',
      label: 'centre distance midway',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula:
        '=SQRT((centre_distance - (toward_near + toward_far) / 2) ^ 2 + ((across_near + across_far) / 2) ^ 2)',
      face: true,
    },
    {
      name: 'change',
      label: 'change of centre distance',
      quantity: 'length',
      basis: 'geometry',
      formula: '=new_distance - centre_distance',
      face: true,
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'tilt_toward',
      label: 'out of parallel, in the plane of the shafts',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ATAN((toward_far - toward_near) / span)',
      display: { in: 'mrad', mm: 'mrad' },
    },
    {
      name: 'tilt_across',
      label: 'skew, across that plane',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=ATAN((across_far - across_near) / span)',
      display: { in: 'mrad', mm: 'mrad' },
    },
    {
      name: 'out_of_line',
      label: 'out of line over the width',
      quantity: 'length',
      basis: 'geometry',
      formula: '=face_width * SQRT((toward_far - toward_near) ^ 2 + (across_far - across_near) ^ 2) / span',
      face: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'In a bearing of that length this comes off the clearance.',
    },
    {
      name: 'backlash_change',
      label: 'change of backlash along the pitch circle',
      quantity: 'length',
      basis: 'model',
      formula: '=2 * change * TAN(pressure_angle)',
      display: { in: 'thou', mm: 'mm' },
      hint: 'Below zero: the teeth come closer.',
    },
    {
      name: 'backlash_left',
      label: 'backlash after boring',
      quantity: 'length',
      basis: 'model',
      formula: '=backlash + backlash_change',
      face: true,
      limits: { lower: '=least_backlash', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
  ],
  validity: [
    {
      holds:
        '=AND(ABS(toward_near) <= 0 m; ABS(toward_far) <= 0 m; ABS(across_near) <= 0 m; ABS(across_far) <= 0 m)',
      otherwise:
        'The bores stand elsewhere than they were made: whatever meshes, mates or lines up with this shaft moves with it. Say so on the part.',
      grade: 'caution',
    },
    {
      holds: '=NOT(ISBLANK(backlash))',
      otherwise:
        'The backlash there is now is not entered: nothing says whether the teeth keep any. Measure it before boring.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(backlash); 1 > 0; backlash_left > 0 m)',
      otherwise:
        'No backlash is left: gears without any run hot and break. Bore to the other side, or bore back.',
      grade: 'caution',
    },
    { holds: '=centre_distance > 0 mm', otherwise: 'The centre distance is above zero.', grade: 'error' },
    { holds: '=span > 0 mm', otherwise: 'The distance between the bores is above zero.', grade: 'error' },
    { holds: '=face_width > 0 mm', otherwise: 'The width is above zero.', grade: 'error' },
    {
      holds: '=ABS(change) <= centre_distance / 50',
      otherwise:
        'The centre distance changes by more than a fiftieth: the backlash rule is not true that far.',
      grade: 'caution',
    },
    {
      holds: '=backlash_change >= -0.05 mm',
      otherwise:
        'The teeth come closer: measure the backlash there is before boring; gears without any run hot and break.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(pressure_angle); TRUE(); AND(pressure_angle > 0 deg; pressure_angle < 45 deg))',
      otherwise: 'The pressure angle lies between 0 and 45 degrees.',
      grade: 'error',
    },
  ],
  assumptions: [
    'The other shaft stays where it was and is straight; both shafts were parallel before.',
    'Backlash by the usual approximation for involute spur gears and small changes.',
  ],
  sources: [
    'Geometry of two lines in space',
    'Change of backlash = 2 x change of centre distance x tan(pressure angle): published gear calculation pages; usual approximation',
    'ISO 53:1998 (pressure angle)',
  ],
  cautions: [
    'Turn the train over by hand through a full turn before power.',
    cutting,
    powerOff,
    lifting,
    oldParts,
  ],
  examples: [
    {
      title: 'Both bores 0.10 mm away from the other shaft: backlash at 20 degrees',
      source:
        'a published gear calculation page: change of backlash about 2 x change of centre distance x tan(pressure angle) = 0.0728 mm',
      grade: 'seen',
      inputs: {
        centre_distance: '150 mm',
        span: '300 mm',
        toward_near: '-0.10 mm',
        toward_far: '-0.10 mm',
        across_near: '0 mm',
        across_far: '0 mm',
        face_width: '40 mm',
        pressure_angle: '20 deg',
        backlash: '0.10 mm',
      },
      expect: {
        change: { value: '0.10 mm', within: 1e-9 },
        backlash_change: { value: '0.0728 mm', within: 0.001 },
        backlash_left: { value: '0.1728 mm', within: 0.001 },
      },
    },
    {
      title: 'Centres 150 mm; 0.10 and 0.20 mm away, 0.05 and 0.15 mm across, bores 300 mm apart',
      source: 'second way: axis through two points in space, distance and direction by vectors',
      grade: 'recomputed',
      inputs: {
        centre_distance: '150 mm',
        span: '300 mm',
        toward_near: '-0.10 mm',
        toward_far: '-0.20 mm',
        across_near: '0.05 mm',
        across_far: '0.15 mm',
        face_width: '40 mm',
        pressure_angle: '20 deg',
      },
      expect: {
        new_distance: { value: '150.1500333 mm', within: '1e-7 mm' },
        out_of_line: { value: '0.018856181 mm', within: 1e-7 },
      },
    },
  ],
});
