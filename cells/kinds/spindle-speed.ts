import { defineCell } from '../record/cell.ts';
import { centres, cutting, milling, wheel } from '../record/hazards.ts';

export default defineCell({
  key: 'spindle-speed',
  edition: 1,
  title: 'Spindle speed',
  purpose:
    'Turns of the spindle for a surface speed, the time of a cut, and what the work or tool then runs at.',
  group: 'machine work',
  inputs: [
    {
      name: 'diameter',
      label: 'diameter of the cut',
      quantity: 'length',
      sensible: ['0.5 mm', '3 m'],
      hint: 'Of the work when turning and boring, of the tool when drilling and milling.',
    },
    {
      name: 'surface_speed',
      label: 'surface speed wanted',
      quantity: 'speed',
      sensible: ['1 m/min', '1000 m/min'],
      hint: 'Of the cutting tool’s maker for this metal.',
    },
    {
      name: 'speed_set',
      label: 'speed the machine has',
      quantity: 'rotational speed',
      optional: true,
      sensible: ['1 rpm', '30000 rpm'],
      hint: 'The step of the gearbox you take. Blank: the speed worked out.',
    },
    {
      name: 'feed',
      label: 'feed for one turn',
      quantity: 'length',
      optional: true,
      sensible: ['5 um', '5 mm'],
    },
    {
      name: 'cut_length',
      label: 'length of the cut, with run-in',
      quantity: 'length',
      optional: true,
      sensible: ['1 mm', '10 m'],
    },
    {
      name: 'top_speed',
      label: 'highest speed allowed',
      quantity: 'rotational speed',
      sensible: ['1 rpm', '60000 rpm'],
      optional: true,
      hint: 'The lowest of machine, chuck, work and wheel.',
    },
  ],
  outputs: [
    {
      name: 'spindle_speed',
      label: 'spindle speed for it',
      quantity: 'rotational speed',
      basis: 'model',
      formula: '=surface_speed / (PI() * diameter)',
      face: true,
      limits: { upper: '=top_speed' },
    },
    {
      name: 'shop_rule',
      label: 'by the shop rule: four times feet a minute over inches',
      quantity: 'rotational speed',
      basis: 'model',
      formula: '=surface_speed / (3 * diameter)',
      hint: 'Pi taken as 3: nearly a twentieth too fast.',
    },
    {
      name: 'speed_taken',
      label: 'speed taken',
      quantity: 'rotational speed',
      basis: 'model',
      formula: '=IF(ISBLANK(speed_set); spindle_speed; speed_set)',
      limits: { upper: '=top_speed' },
    },
    {
      name: 'surface_speed_there',
      label: 'surface speed at the speed taken',
      quantity: 'speed',
      basis: 'model',
      formula: '=PI() * diameter * speed_taken',
      face: true,
    },
    {
      name: 'feed_rate',
      label: 'feed, along',
      quantity: 'speed',
      basis: 'model',
      formula: '=feed * speed_taken',
      display: { in: 'in/min', mm: 'mm/min' },
    },
    {
      name: 'cutting_time',
      label: 'time of one cut',
      quantity: 'time',
      basis: 'model',
      formula: '=cut_length / feed_rate',
      face: true,
      display: { in: 'min', mm: 'min' },
    },
  ],
  validity: [
    {
      holds: '=AND(diameter > 0 m; surface_speed > 0 m/s)',
      otherwise: 'Diameter and surface speed are above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(OR(ISBLANK(feed); ISBLANK(cut_length)); 1 > 0; AND(feed > 0 m; cut_length > 0 m))',
      otherwise: 'Feed and length of the cut are above zero.',
      grade: 'error',
    },
    {
      holds: '=ABS(surface_speed_there / surface_speed - 1) <= 0.25',
      otherwise:
        'The speed the machine has is more than a quarter off the surface speed wanted: take the next step, or another tool.',
      grade: 'caution',
    },
    {
      holds: '=NOT(ISBLANK(top_speed))',
      otherwise:
        'Highest speed allowed not entered: look at machine, chuck, wheel, and how the work is held.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(speed_set); 1 > 0; speed_set > 0 rpm)',
      otherwise: 'The speed the machine has is above zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Speed at the greatest diameter of the cut; when facing it falls toward the middle.',
    'What surface speed a metal bears is for the tool’s maker to say: this cell only turns it into turns.',
  ],
  sources: ['n = V / (pi d) (geometry); shop rule 4 V / D: seen in an engine lathe manual'],
  cautions: [
    'Work off centre, long bar out of the spindle, and chuck jaws near their end fly at speed: start slow, stand clear of the plane of the chuck, guard shut.',
    'Take the chuck key out before anything else.',
    wheel,
    cutting,
    milling,
    centres,
  ],
  examples: [
    {
      title: '90 feet a minute at 2 in: exact and by the shop rule',
      source: 'N = 12 V / (pi D) = 171.89; 4 V / D = 180, as in a lathe manual',
      grade: 'computed',
      inputs: { diameter: '2 in', surface_speed: '90 ft/min' },
      expect: {
        spindle_speed: { value: '171.89 rpm', within: 1e-4 },
        shop_rule: { value: '180 rpm', within: 1e-9 },
      },
    },
    {
      title: '30 metres a minute at 50 mm',
      source: 'n = 1000 v / (pi d) = 190.99',
      grade: 'computed',
      inputs: { diameter: '50 mm', surface_speed: '30 m/min', feed: '0.2 mm', cut_length: '100 mm' },
      expect: {
        spindle_speed: { value: '190.99 rpm', within: 1e-4 },
        cutting_time: { value: '2.618 min', within: 1e-3 },
      },
    },
  ],
});
