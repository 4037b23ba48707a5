import { defineCell } from '../record/cell.ts';

export default defineCell({
  key: 'gauge-setting',
  edition: 1,
  title: 'Gauge set to a known size',
  purpose: 'Size from a comparing gauge: what it was set to, and the divisions it then showed.',
  group: 'measuring',
  inputs: [
    {
      name: 'set_to',
      label: 'set to (ring, blocks or micrometer)',
      quantity: 'length',
      counts: 'aside',
      sensible: ['1 mm', '1 m'],
      hint: 'Size on its certificate, ± its doubt, or the cell of the ring. Without a doubt where the gauge cell names what it is set in.',
    },
    {
      name: 'divisions',
      label: 'divisions shown',
      quantity: 'number',
      counts: 'measured',
      sensible: ['-100', '100'],
    },
    {
      name: 'division',
      label: 'size of one division',
      quantity: 'length',
      counts: 'aside',
      sensible: ['0.1 um', '0.1 mm'],
    },
    {
      name: 'sense',
      label: 'sense: 1 or -1',
      quantity: 'number',
      default: '1',
      hint: '1 where a larger part shows plus; -1 where the dial runs the other way, as on many bore gauges.',
    },
    {
      name: 'gauge',
      label: 'gauge',
      record: 'gauge',
      optional: true,
      reads: { sizes: ['size'], travel: 'difference', division: 'division' },
    },
  ],
  outputs: [
    {
      name: 'size',
      label: 'size',
      quantity: 'length',
      basis: 'geometry',
      formula: '=set_to + difference + reading_error + IF(ISBLANK(gauge); 0 mm; gauge.error)',
      face: true,
    },
    {
      name: 'difference',
      label: 'difference from the setting',
      quantity: 'length',
      basis: 'geometry',
      formula: '=sense * divisions * division',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'reading_error',
      label: 'error of one reading',
      quantity: 'length',
      basis: 'geometry',
      formula: '=0 mm',
      spread: {
        low: '=IF(ISBLANK(gauge); -division / 2; -2 * gauge.repeatability)',
        high: '=IF(ISBLANK(gauge); division / 2; 2 * gauge.repeatability)',
        distribution: 'normal',
        label: 'scatter of one reading',
      },
    },
  ],
  validity: [
    {
      holds: '=OR(sense = 1; sense = -1)',
      otherwise: 'The sense is 1 (a larger part shows plus) or -1 (a larger part shows minus).',
      grade: 'error',
    },
    { holds: '=division > 0 mm', otherwise: 'The size of one division is above zero.', grade: 'error' },
    {
      holds: '=ABS(divisions) <= 50',
      otherwise:
        'More than 50 divisions from the setting: set the gauge nearer to the size, its screw or lever is not true that far.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The gauge has the temperature of what it was set to, and the part too.',
    'With no gauge named, a reading is doubtful by half a division (k = 2).',
  ],
  sources: [
    'JCGM 100:2008, 4.3 (type B evaluation) and 5.2 (shared errors)',
    'Direction of the dial: common practice, no source',
  ],
  cautions: [],
  examples: [
    {
      title: 'Set at 2 in, turns back at the 7 thou mark: 2.007 in',
      source:
        'a published guide to bore gauges: zeroed to 2 in, pointer turns at .007 in, the hole is 2.007 in',
      grade: 'seen',
      inputs: { set_to: '2 in', divisions: '7', division: '0.001 in' },
      expect: { size: { value: '2.007 in', within: 1e-12 } },
    },
    {
      title: 'Bore gauge set at 1.7500 in, shows 14 divisions of 0.0001 in above it',
      source: 'by hand: 1.7500 + 14 x 0.0001 = 1.7514',
      grade: 'recomputed',
      inputs: { set_to: '1.75 in', divisions: '14', division: '0.0001 in' },
      expect: {
        size: { value: '1.7514 in', within: 1e-12 },
        difference: { value: '0.0014 in', within: 1e-12 },
      },
    },
    {
      title: 'The same on a dial that runs the other way',
      source: 'by hand: 1.7500 - 14 x 0.0001 = 1.7486',
      grade: 'recomputed',
      inputs: { set_to: '1.75 in', divisions: '14', division: '0.0001 in', sense: '-1' },
      expect: { size: { value: '1.7486 in', within: 1e-12 } },
    },
  ],
});
