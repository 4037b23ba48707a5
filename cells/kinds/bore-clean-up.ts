import { defineCell } from '../record/cell.ts';
import { cutting, oldParts } from '../record/hazards.ts';

export default defineCell({
  key: 'bore-clean-up',
  edition: 1,
  title: 'Bore clean-up about the true axis',
  purpose:
    'Size at which a worn bore cleans up when it is bored about its true axis, and the oversize that gives.',
  group: 'bore and shaft',
  inputs: [
    {
      name: 'greatest',
      label: 'greatest diameter as found',
      quantity: 'length',
      role: 'measured',
      sensible: ['3 mm', '2 m'],
      hint: 'The greatest of all places and directions: = bore.greatest',
    },
    {
      name: 'offset',
      label: 'worn bore off the true axis by',
      quantity: 'length',
      role: 'measured',
      sensible: ['0 mm', '10 mm'],
      hint: 'Half of an indicator reading about the true axis.',
    },
    {
      name: 'skin',
      label: 'to come off beyond the deepest wear, on the diameter',
      quantity: 'length',
      sensible: ['0 mm', '2 mm'],
      hint: 'For scores, hammered or hard skin.',
    },
    { name: 'new_size', label: 'diameter when new', quantity: 'length', sensible: ['3 mm', '2 m'] },
    {
      name: 'series',
      label: 'series of oversizes',
      choice: 'oversizes',
      optional: true,
      hint: 'Blank for a bore that gets a bush of its own.',
    },
  ],
  outputs: [
    {
      name: 'cleans_up_at',
      label: 'cleans up at',
      quantity: 'length',
      basis: 'geometry',
      formula: '=greatest + 2 * offset + skin',
      face: true,
    },
    {
      name: 'bored_size',
      label: 'bore to',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=IF(ISBLANK(series); cleans_up_at; new_size + OVERSIZE(series; new_size; cleans_up_at))',
      held: true,
      face: true,
      hint: 'Without a series: where it cleans up. A decision: the doubt of the readings shows in what it leaves to spare.',
    },
    {
      name: 'oversize',
      label: 'oversize',
      quantity: 'length',
      basis: 'geometry',
      formula: '=bored_size - new_size',
      face: true,
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'to_spare',
      label: 'bored size less clean-up size',
      quantity: 'length',
      basis: 'geometry',
      formula: '=bored_size - cleans_up_at',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'wall_loss',
      label: 'off the wall on the worn side',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(bored_size - greatest) / 2 - offset',
      display: { in: 'thou', mm: 'mm' },
    },
  ],
  validity: [
    {
      holds: '=AND(greatest > 0 mm; new_size > 0 mm)',
      otherwise: 'A diameter is above zero.',
      grade: 'error',
    },
    { holds: '=offset >= 0 mm', otherwise: 'The offset is a distance, not below zero.', grade: 'caution' },
    { holds: '=skin >= 0 mm', otherwise: 'The skin is not below zero.', grade: 'error' },
    {
      holds: '=greatest >= new_size - 0.05 mm',
      otherwise: 'The bore measures smaller than new: look at the readings, or at the size when new.',
      grade: 'caution',
    },
    {
      holds: '=offset < greatest / 4',
      otherwise:
        'The offset is a large part of the bore: see that it is half of an indicator reading, in the same unit.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(series); 1 > 0; cleans_up_at > new_size)',
      otherwise: 'It cleans up at the size when new: it need not go to an oversize.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The worn bore is taken as a circle of its greatest diameter, centred the offset away from the true axis: a cautious figure.',
    'Boring about the worn bore instead of the true axis takes less metal and leaves the centre shifted: see the cell on line-bored housings.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Geometry: a circle about the true axis covers one of diameter D, e off, from D + 2 e up',
    'The table of oversizes',
  ],
  cautions: [cutting, oldParts],
  examples: [
    {
      title: 'Bore 2.262 in greatest, 4 thou off the true axis, 4 thou skin, no series',
      source:
        'second way: farthest point of the worn circle from the true axis, stepped round by coordinates',
      grade: 'recomputed',
      inputs: { greatest: '2.262 in', offset: '4 thou', skin: '4 thou', new_size: '2.25 in' },
      expect: {
        cleans_up_at: { value: '2.274 in', within: 1e-9 },
        bored_size: { value: '2.274 in', within: 1e-9 },
        oversize: { value: '24 thou', within: 1e-9 },
      },
    },
    {
      title: 'The same in inch steps: 30 over',
      source: 'by hand: 24 thou is needed; next of 10, 20, 30 thou',
      grade: 'recomputed',
      inputs: { greatest: '2.262 in', offset: '4 thou', skin: '4 thou', new_size: '2.25 in', series: 'inch' },
      expect: {
        bored_size: { value: '2.28 in', within: 1e-9 },
        oversize: { value: '30 thou', within: 1e-9 },
      },
    },
  ],
  drawing: ({ cleans_up_at, greatest, offset }) =>
    cleans_up_at === undefined || greatest === undefined || offset === undefined
      ? undefined
      : {
          width: 320,
          height: 240,
          shapes: [
            { kind: 'rect', x: 30, y: 10, width: 260, height: 220, fill: 'section-a' },
            { kind: 'circle', x: 160, y: 120, r: 90, fill: 'gap' },
            { kind: 'circle', x: offset > 0 ? 174 : 160, y: 120, r: 70, fill: 'paper' },
            { kind: 'line', x1: 50, y1: 120, x2: 280, y2: 120, style: 'centre' },
            { kind: 'line', x1: 160, y1: 15, x2: 160, y2: 225, style: 'centre' },
            { kind: 'dimension', x1: 70, y1: 120, x2: 250, y2: 120, offset: -60, of: 'cleans_up_at' },
            {
              kind: 'dimension',
              x1: offset > 0 ? 104 : 90,
              y1: 120,
              x2: offset > 0 ? 244 : 230,
              y2: 120,
              offset: 30,
              of: 'greatest',
            },
          ],
          exaggeration: 'wear and offset drawn larger than they are',
        },
});
