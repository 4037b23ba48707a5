import { defineCell } from '../record/cell.ts';
import { powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'bush-misalignment',
  edition: 1,
  title: 'Bushes out of line',
  purpose:
    'How much of the running clearance is used up when two bushes do not share one axis, and how much they may be off.',
  group: 'clearance',
  inputs: [
    {
      name: 'clearance',
      label: 'running clearance, on diameter',
      quantity: 'length',
      sensible: ['5 um', '1 mm'],
    },
    {
      name: 'bush_length',
      label: 'bush length',
      quantity: 'length',
      sensible: ['3 mm', '500 mm'],
      hint: 'Of the longer bush.',
    },
    {
      name: 'span',
      label: 'from middle of one bush to middle of the other',
      quantity: 'length',
      sensible: ['10 mm', '5 m'],
    },
    {
      name: 'offset',
      label: 'one axis stands beside the other by',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '2 mm'],
      hint: 'Both axes parallel. Half of the indicator reading taken all round.',
    },
    {
      name: 'tilt',
      label: 'one axis leans against the other by',
      quantity: 'angle',
      optional: true,
      sensible: ['0 deg', '2 deg'],
      hint: 'As an angle, or as a slope: =0.002 in / 4 in.',
    },
    {
      name: 'least_clearance',
      label: 'least clearance wanted',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'lean',
      label: 'shaft leans in the bush by',
      quantity: 'angle',
      basis: 'geometry',
      formula: '=IF(ISBLANK(offset); 0; ABS(offset) / span) + IF(ISBLANK(tilt); 0; ABS(tilt))',
      hint: 'The straight shaft runs through the middles of both bushes.',
    },
    {
      name: 'used_up',
      label: 'clearance used up',
      quantity: 'length',
      basis: 'geometry',
      formula: '=bush_length * TAN(lean)',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'clearance_left',
      label: 'clearance left',
      quantity: 'length',
      basis: 'geometry',
      formula: '=clearance - used_up',
      face: true,
      limits: { lower: '=least_clearance', metalOn: 'low' },
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'greatest_offset',
      label: 'most the axes may stand apart before it binds',
      quantity: 'length',
      basis: 'geometry',
      formula: '=span * clearance / bush_length',
      face: true,
      display: { in: 'thou', mm: 'um' },
      hint: 'Parallel axes, no lean besides, nothing left for oil.',
    },
  ],
  validity: [
    {
      holds: '=AND(clearance > 0 m; bush_length > 0 m; span > 0 m)',
      otherwise: 'Clearance, bush length and span must be above zero.',
      grade: 'error',
    },
    {
      holds: '=span > bush_length',
      otherwise: 'The bushes would overlap: span is measured from middle to middle.',
      grade: 'error',
    },
    {
      holds: '=NOT(AND(ISBLANK(offset); ISBLANK(tilt)))',
      otherwise: 'Neither an offset nor a lean is entered: the bushes are taken as in line.',
      grade: 'caution',
    },
    {
      holds: '=clearance_left > 0 m',
      otherwise:
        'The shaft binds: it touches at both ends of the bush. Bore both in line, shorten the bushes, or give more clearance.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Straight stiff shaft and straight bores; bending of the shaft under load comes on top.',
    'Offset and lean are taken in one plane, the worst case.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Geometry of a straight shaft in a leaning bore: clearance used up = length x tan(lean)',
  ],
  cautions: [
    'A shaft that binds heats at the bush ends: stop after the first minutes, power off, and take the temperature of both ends with a thermometer, not by hand.',
    powerOff,
  ],
  examples: [
    {
      title: 'Bushes 30 mm long, 200 mm apart, axes 0.10 mm apart',
      source:
        'Second method: a shaft turned in the plane until its corners touch the bore, D = d / cos + L tan solved for the lean, then the clearance that just passes',
      grade: 'recomputed',
      inputs: { clearance: '0.060 mm', bush_length: '30 mm', span: '200 mm', offset: '0.10 mm' },
      expect: {
        used_up: { value: '0.0150 mm', within: '0.0001 mm' },
        greatest_offset: { value: '0.400 mm', within: 1e-3 },
      },
    },
  ],
  drawing: (v) => {
    const { clearance, bush_length: bush, span } = v;
    if (clearance === undefined || bush === undefined || span === undefined) return undefined;
    if (!(clearance > 0 && bush > 0 && span > bush) || !Number.isFinite(span + bush)) return undefined;
    const wide = (Math.min(bush / span, 0.6) * 180) / 1.2;
    const [left, right, axis, off] = [80, 230, 100, 8];
    const bushAt = (x: number, y: number) =>
      [-34, 16].map((edge) => ({
        kind: 'rect' as const,
        x: x - wide / 2,
        y: y + edge,
        width: wide,
        height: 18,
        fill: 'section-b' as const,
      }));
    return {
      width: 310,
      height: 190,
      shapes: [
        ...bushAt(left, axis + off),
        ...bushAt(right, axis - off),
        {
          kind: 'path',
          d: `M20 ${axis + off - 8}L290 ${axis - off - 14}L290 ${axis - off + 14}L20 ${axis + off + 20}Z`,
          fill: 'section-a',
        },
        { kind: 'line', x1: left - 60, y1: axis + off, x2: left + 70, y2: axis + off, style: 'centre' },
        { kind: 'line', x1: right - 70, y1: axis - off, x2: right + 60, y2: axis - off, style: 'centre' },
        {
          kind: 'dimension',
          x1: left,
          y1: axis + off + 34,
          x2: right,
          y2: axis + off + 34,
          offset: -26,
          of: 'span',
        },
        {
          kind: 'dimension',
          x1: right - wide / 2,
          y1: axis - off - 34,
          x2: right + wide / 2,
          y2: axis - off - 34,
          offset: 18,
          of: 'bush_length',
        },
      ],
      exaggeration: 'offset and lean drawn much larger than they are',
    };
  },
});
