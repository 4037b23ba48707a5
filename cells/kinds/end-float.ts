import { coldTemperature } from '../formulas/cold-temperature.ts';
import { makersLimits, makersLimitsHold } from '../formulas/makers-limits.ts';
import { defineCell } from '../record/cell.ts';
import { oldParts, powerOff } from '../record/hazards.ts';

const width = (n: number) => ({
  name: `width_${n}`,
  label: `width of part ${n}`,
  quantity: 'length',
  optional: true,
  sensible: ['0.05 mm', '1 m'] as const,
});

export default defineCell({
  key: 'end-float',
  edition: 1,
  title: 'End float',
  purpose:
    'What is left between the faces that stop a shaft endways, from the widths that stand between them.',
  group: 'clearance',
  inputs: [
    {
      name: 'space',
      label: 'from stop to stop',
      quantity: 'length',
      sensible: ['1 mm', '5 m'],
      hint: 'Between the shoulders of the shaft, or between the faces of the housing: the longer of both.',
    },
    {
      name: 'width_1',
      label: 'width of part 1',
      quantity: 'length',
      sensible: ['0.05 mm', '5 m'],
      hint: 'Bearing, housing, collar, washer: what stands between.',
    },
    width(2),
    width(3),
    width(4),
    width(5),
    {
      name: 'face_runout_1',
      label: 'runout of one stop face',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '0.5 mm'],
      hint: 'The whole indicator reading.',
    },
    {
      name: 'face_runout_2',
      label: 'runout of the other stop face',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '0.5 mm'],
    },
    ...makersLimits('end float'),
    {
      name: 'float_wanted',
      label: 'end float to cut part 1 for',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '5 mm'],
      hint: 'Cold. Blank: no width is worked out.',
    },
    {
      name: 'space_running',
      label: 'running temperature of what the space is measured on',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '250 degC'],
    },
    {
      name: 'parts_running',
      label: 'running temperature of the parts between',
      quantity: 'temperature',
      optional: true,
      sensible: ['-40 degC', '250 degC'],
    },
    {
      name: 'hot_floor',
      label: 'least end float wanted, running',
      quantity: 'length',
      sensible: ['0 mm', '5 mm'],
      optional: true,
    },
    coldTemperature,
    {
      name: 'space_material',
      label: 'material of what the space is measured on',
      record: 'material',
      optional: true,
    },
    { name: 'parts_material', label: 'material of the parts between', record: 'material', optional: true },
  ],
  outputs: [
    {
      name: 'parts_total',
      label: 'widths together',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=width_1 + IF(ISBLANK(width_2); 0 m; width_2) + IF(ISBLANK(width_3); 0 m; width_3) + IF(ISBLANK(width_4); 0 m; width_4) + IF(ISBLANK(width_5); 0 m; width_5)',
    },
    {
      name: 'end_float',
      label: 'end float, cold',
      quantity: 'length',
      basis: 'geometry',
      formula: '=space - parts_total',
      face: true,
      limits: { lower: '=new_least', upper: '=new_greatest', wear: '=wear_limit', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'width_to_cut',
      label: 'width to cut part 1 to',
      quantity: 'length',
      basis: 'geometry',
      ofPart: true,
      formula: '=width_1 + end_float - float_wanted',
      face: true,
      hint: 'With all the others as they are. Wider than it is now: make it anew, or shim it.',
    },
    {
      name: 'to_take_off',
      label: 'to take off part 1',
      quantity: 'length',
      basis: 'geometry',
      formula: '=float_wanted - end_float',
      display: { in: 'thou', mm: 'mm' },
      hint: 'Below zero it is too narrow by that.',
    },
    {
      name: 'runout_total',
      label: 'taken by face runout',
      quantity: 'length',
      basis: 'geometry',
      formula:
        '=IF(ISBLANK(face_runout_1); 0 m; face_runout_1) + IF(ISBLANK(face_runout_2); 0 m; face_runout_2)',
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'least_float',
      label: 'least over a turn, high spots meeting',
      quantity: 'length',
      basis: 'geometry',
      formula: '=end_float - runout_total',
      face: true,
      limits: { lower: '=new_least', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
    {
      name: 'hot_float',
      label: 'least over a turn, running',
      quantity: 'length',
      basis: 'model',
      formula:
        '=least_float + space * space_material.alpha * (space_running - cold_temperature) - parts_total * parts_material.alpha * (parts_running - cold_temperature)',
      face: true,
      limits: { lower: '=hot_floor', metalOn: 'low' },
      display: { in: 'thou', mm: 'mm' },
    },
  ],
  validity: [
    {
      holds: '=AND(space > 0 m; width_1 > 0 m)',
      otherwise: 'The space and the first width must be above zero.',
      grade: 'error',
    },
    {
      holds: '=end_float > 0 m',
      otherwise:
        'The widths fill the space: no float is left, the shaft is clamped endways. Take metal off, or shims out.',
      grade: 'caution',
    },
    {
      holds: '=least_float > 0 m',
      otherwise:
        'Face runout takes the whole float: the shaft binds once a turn. True the faces, or give more float.',
      grade: 'caution',
    },
    ...makersLimitsHold('end float'),
    {
      holds: '=IF(ISBLANK(width_2); 1 > 0; width_2 > 0 m)',
      otherwise: 'The width of part 2 is above zero: leave it blank where there is no such part.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(width_3); 1 > 0; width_3 > 0 m)',
      otherwise: 'The width of part 3 is above zero: leave it blank where there is no such part.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(width_4); 1 > 0; width_4 > 0 m)',
      otherwise: 'The width of part 4 is above zero: leave it blank where there is no such part.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(width_5); 1 > 0; width_5 > 0 m)',
      otherwise: 'The width of part 5 is above zero: leave it blank where there is no such part.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(face_runout_1); 1 > 0; face_runout_1 >= 0 m)',
      otherwise: 'A runout is the whole indicator reading, not below zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(face_runout_2); 1 > 0; face_runout_2 >= 0 m)',
      otherwise: 'A runout is the whole indicator reading, not below zero.',
      grade: 'error',
    },
  ],
  assumptions: [
    'Faces flat; runout of both faces is taken at its worst, high spots meeting.',
    'When hot, the space and the parts between each have one temperature and one metal.',
  ],
  sources: [
    "Stack of sizes: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), Example 1-3, against which it is held",
  ],
  cautions: ['Check end float by hand with the power locked off; a pry bar slips.', powerOff, oldParts],
  examples: [
    {
      title: 'Saw arbor between its housings: collar, washer and hub in a space of 6.250 in',
      source: 'By hand: 6.250 - 1.000 - 0.125 - 5.118 = 0.007 in',
      grade: 'recomputed',
      inputs: {
        space: '6.250 in ± 0.002 in',
        width_1: '5.118 in ± 0.001 in',
        width_2: '0.125 in ± 0.001 in',
        width_3: '1.000 in ± 0.001 in',
      },
      expect: { end_float: { value: '0.007 in', within: '1e-9 in' } },
    },
    {
      title: 'The same: hub cut for a float of 0.010 in',
      source: 'By hand: 6.250 - 0.125 - 1.000 - 0.010 = 5.115 in',
      grade: 'recomputed',
      inputs: {
        space: '6.250 in',
        width_1: '5.118 in',
        width_2: '0.125 in',
        width_3: '1.000 in',
        float_wanted: '0.010 in',
      },
      expect: { width_to_cut: { value: '5.115 in', within: '1e-9 in' } },
    },
  ],
  drawing: (v) => {
    const { space, parts_total: parts, end_float: gap } = v;
    if (space === undefined || parts === undefined || gap === undefined) return undefined;
    if (!(space > 0 && parts > 0 && gap > 0) || !Number.isFinite(space + parts)) return undefined;
    const [left, right, axis, shown] = [60, 260, 100, 10];
    return {
      width: 320,
      height: 200,
      shapes: [
        { kind: 'rect', x: left - 30, y: axis - 50, width: 30, height: 100, fill: 'section-a' },
        { kind: 'rect', x: left, y: axis - 20, width: right - left, height: 40, fill: 'section-a' },
        { kind: 'rect', x: right, y: axis - 50, width: 30, height: 100, fill: 'section-a' },
        { kind: 'rect', x: left, y: axis - 60, width: right - left - shown, height: 38, fill: 'section-b' },
        { kind: 'rect', x: left, y: axis + 22, width: right - left - shown, height: 38, fill: 'section-b' },
        { kind: 'line', x1: 14, y1: axis, x2: 306, y2: axis, style: 'centre' },
        { kind: 'dimension', x1: left, y1: axis + 60, x2: right, y2: axis + 60, offset: -22, of: 'space' },
        {
          kind: 'dimension',
          x1: right - shown,
          y1: axis - 60,
          x2: right,
          y2: axis - 60,
          offset: 20,
          of: 'end_float',
        },
      ],
      exaggeration: 'float drawn larger than it is',
    };
  },
});
