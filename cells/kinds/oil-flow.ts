import { defineCell } from '../record/cell.ts';
import { powerOff, pressureTest } from '../record/hazards.ts';

export default defineCell({
  key: 'oil-flow',
  edition: 1,
  title: 'Oil through a clearance and grooves',
  purpose:
    'How much oil a pressure drives along a clearance and through axial grooves, and which of the two lets it go.',
  group: 'clearance',
  inputs: [
    { name: 'diameter', label: 'diameter', quantity: 'length', sensible: ['3 mm', '1 m'] },
    {
      name: 'clearance',
      label: 'clearance, on diameter',
      quantity: 'length',
      sensible: ['5 um', '1 mm'],
    },
    {
      name: 'length',
      label: 'length the oil goes',
      quantity: 'length',
      sensible: ['2 mm', '1 m'],
      hint: 'Along the shaft, from where it is fed to where it is free.',
    },
    {
      name: 'pressure',
      label: 'pressure that drives it',
      quantity: 'pressure',
      sensible: ['1 kPa', '50 MPa'],
      hint: 'More than at the free end.',
    },
    {
      name: 'viscosity',
      label: 'viscosity of the oil',
      quantity: 'viscosity',
      sensible: ['0.5 mPa.s', '2 Pa.s'],
      hint: 'At its temperature there.',
    },
    {
      name: 'off_centre',
      label: 'shaft off centre, as a share of all it can',
      quantity: 'number',
      default: '0',
      sensible: ['0', '1'],
      source: '0: in the middle, 1: against the wall',
    },
    {
      name: 'grooves',
      label: 'number of grooves along',
      quantity: 'number',
      default: '1',
      sensible: ['1', '12'],
      source: 'one, where its width and depth are given',
    },
    {
      name: 'groove_width',
      label: 'width of a groove',
      quantity: 'length',
      optional: true,
      sensible: ['0.2 mm', '50 mm'],
    },
    {
      name: 'groove_depth',
      label: 'depth of a groove',
      quantity: 'length',
      optional: true,
      sensible: ['0.1 mm', '30 mm'],
      hint: 'From the shaft to its floor.',
    },
    {
      name: 'density',
      label: 'density of the oil',
      quantity: 'density',
      default: '870 kg/m3',
      sensible: ['700 kg/m3', '1100 kg/m3'],
      source: 'common practice, no source: mineral oil',
    },
    {
      name: 'least_flow',
      label: 'least flow wanted',
      quantity: 'flow',
      optional: true,
    },
    {
      name: 'greatest_flow',
      label: 'greatest flow the pump can spare',
      quantity: 'flow',
      optional: true,
    },
  ],
  outputs: [
    {
      name: 'through_clearance',
      label: 'through the clearance',
      quantity: 'flow',
      formula:
        '=PI() * diameter * (clearance / 2) ^ 3 * pressure * (1 + 1.5 * off_centre ^ 2) / (12 * viscosity * length)',
      basis: 'model',
      face: true,
    },
    {
      name: 'slimness',
      label: 'groove: its smaller side over its larger',
      quantity: 'number',
      formula: '=MIN(groove_width; groove_depth) / MAX(groove_width; groove_depth)',
      basis: 'geometry',
    },
    {
      name: 'through_grooves',
      label: 'through the grooves',
      quantity: 'flow',
      formula:
        '=IF(OR(ISBLANK(groove_width); ISBLANK(groove_depth)); 0 m3/s; grooves * MAX(groove_width; groove_depth) * MIN(groove_width; groove_depth) ^ 3 * pressure / (12 * viscosity * length) * (1 - 0.627417 * slimness * (1 - 2 / (EXP(PI() / slimness) + 1))))',
      basis: 'model',
      face: true,
    },
    {
      name: 'flow',
      label: 'oil in all',
      quantity: 'flow',
      formula: '=through_clearance + through_grooves',
      basis: 'model',
      face: true,
      limits: { lower: '=least_flow', upper: '=greatest_flow' },
    },
    {
      name: 'by_grooves',
      label: 'share that goes through the grooves',
      quantity: 'number',
      formula: '=through_grooves / flow',
      basis: 'model',
      display: { in: '%', mm: '%' },
    },
    {
      name: 'for_twice',
      label: 'clearance that lets twice as much through',
      quantity: 'length',
      formula: '=clearance * 2 ^ (1 / 3)',
      basis: 'model',
      hint: 'It goes with the third power: a quarter more clearance, twice the oil.',
    },
    {
      name: 'reynolds',
      label: 'Reynolds number in the clearance',
      quantity: 'number',
      formula: '=2 * through_clearance * density / (PI() * diameter * viscosity)',
      basis: 'model',
    },
    {
      name: 'reynolds_groove',
      label: 'Reynolds number in a groove',
      quantity: 'number',
      formula:
        '=IF(OR(ISBLANK(groove_width); ISBLANK(groove_depth)); 0; 2 * through_grooves / grooves * density / ((groove_width + groove_depth) * viscosity))',
      basis: 'model',
    },
  ],
  validity: [
    {
      holds: '=AND(diameter > 0 m; clearance > 0 m; length > 0 m; viscosity > 0 Pa.s; density > 0 kg/m3)',
      otherwise: 'Sizes, viscosity and density are above zero.',
      grade: 'error',
    },
    {
      holds: '=pressure >= 0 Pa',
      otherwise: 'The pressure drives the oil outward: enter it without a sign.',
      grade: 'error',
    },
    {
      holds: '=AND(off_centre >= 0; off_centre <= 1)',
      otherwise: 'A shaft stands off centre by 0 to 1 of what it can.',
      grade: 'error',
    },
    {
      holds: '=AND(grooves >= 1; grooves = ROUND(grooves; 0))',
      otherwise: 'Grooves are counted whole, from one; without any, leave width and depth blank.',
      grade: 'error',
    },
    {
      holds:
        '=IF(OR(ISBLANK(groove_width); ISBLANK(groove_depth)); 1 > 0; AND(groove_width > 0 m; groove_depth > 0 m))',
      otherwise: 'A groove has width and depth above zero.',
      grade: 'error',
    },
    {
      holds: '=ISBLANK(groove_width) = ISBLANK(groove_depth)',
      otherwise: 'Only one side of the groove is entered, so that no groove is counted: enter both.',
      grade: 'caution',
    },
    {
      holds: '=clearance <= diameter / 20',
      otherwise: 'A gap so wide is no thin film: these formulas do not hold for it.',
      grade: 'caution',
    },
    {
      holds: '=AND(reynolds <= 2000; reynolds_groove <= 2000)',
      otherwise: 'The flow is not laminar: less oil comes than this says.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Steady, laminar flow of an oil of one viscosity; the shaft does not turn, and nothing is lost where the oil goes in.',
    'Grooves rectangular, open to both ends; their mouths are not taken from the clearance.',
  ],
  sources: [
    'Flow along a thin ring, pi D c^3 p (1 + 1.5 e^2) / (12 mu L), c the radial clearance: White, Viscous Fluid Flow, 3e (2006), sec. 3-3 (from memory)',
    'Flow along a rectangular duct: w h^3 p / (12 mu L) times the first term of its series, within 0.7 % of the whole: White, Viscous Fluid Flow, 3e (2006), sec. 3-3 (from memory)',
  ],
  cautions: [
    'Oil under pressure pierces skin: never feel for a leak; let the pressure off before a joint is opened.',
    'Hot oil burns, and its mist ignites.',
    pressureTest,
    powerOff,
  ],
  examples: [
    {
      title: 'Shaft of 50 mm against the wall, 0.10 mm of clearance',
      source:
        'recomputed: the flow between parallel plates, w h^3 p / (12 mu L), summed round the ring over the local gap c (1 + e cos): 2.5 times the middle’s',
      grade: 'recomputed',
      inputs: {
        diameter: '50 mm',
        clearance: '0.10 mm',
        length: '40 mm',
        pressure: '200 kPa',
        viscosity: '30 mPa.s',
        off_centre: '1',
      },
      expect: {
        through_clearance: { value: '0.681769 cm3/s', within: 1e-5 },
        flow: { value: '0.681769 cm3/s', within: 1e-5 },
      },
    },
    {
      title: 'A square groove of 2 mm, 20 mm long',
      source:
        'f Re of a square duct 56.9, as printed in a table of non-circular ducts, so Q = a^4 p / (28.45 mu L): 93.72 cm3/s of 2 mm, 100 kPa, 30 mPa s, 20 mm',
      grade: 'seen',
      inputs: {
        diameter: '50 mm',
        clearance: '0.10 mm',
        length: '20 mm',
        pressure: '100 kPa',
        viscosity: '30 mPa.s',
        grooves: '1',
        groove_width: '2 mm',
        groove_depth: '2 mm',
      },
      expect: { through_grooves: { value: '93.72 cm3/s', within: 0.01 } },
    },
    {
      title: 'A groove twice as wide as deep',
      source:
        'f Re 62.2 of sides 2 to 1, as printed in the same table: Q = 2 p A d^2 / (62.2 mu L), d = 4 A / circumference = 2.6667 mm; 4 x 2 mm, 100 kPa, 30 mPa s, 20 mm',
      grade: 'seen',
      inputs: {
        diameter: '50 mm',
        clearance: '0.10 mm',
        length: '20 mm',
        pressure: '100 kPa',
        viscosity: '30 mPa.s',
        groove_width: '4 mm',
        groove_depth: '2 mm',
      },
      expect: { through_grooves: { value: '304.9 cm3/s', within: 0.01 } },
    },
  ],
  drawing: ({ diameter, length, clearance }) => {
    if (diameter === undefined || length === undefined || clearance === undefined) return undefined;
    if (!(diameter > 0 && length > 0 && clearance > 0 && clearance < diameter)) return undefined;
    const scale = Math.min(170 / length, 66 / diameter);
    if (!Number.isFinite(scale)) return undefined;
    const [half, long, gap, wall] = [(diameter * scale) / 2, length * scale, 9, 24];
    const [x, y] = [130 - long / 2, 92];
    const arrow = (at: number) => [
      { kind: 'line' as const, x1: x + long - 4, y1: at, x2: x + long + 20, y2: at },
      {
        kind: 'path' as const,
        d: `M${x + long + 24} ${at}L${x + long + 15} ${at - 3}L${x + long + 15} ${at + 3}Z`,
        fill: 'paper' as const,
      },
    ];
    return {
      width: 300,
      height: y + half + gap + wall + 44,
      shapes: [
        { kind: 'rect', x, y: y - half - gap - wall, width: long, height: wall, fill: 'section-b' },
        { kind: 'rect', x, y: y + half + gap, width: long, height: wall, fill: 'section-b' },
        { kind: 'rect', x, y: y - half - gap, width: long, height: gap, fill: 'gap' },
        { kind: 'rect', x, y: y + half, width: long, height: gap, fill: 'gap' },
        { kind: 'rect', x: x - 30, y: y - half, width: long + 60, height: 2 * half, fill: 'section-a' },
        ...arrow(y - half - gap / 2),
        ...arrow(y + half + gap / 2),
        { kind: 'line', x1: x - 42, y1: y, x2: x + long + 42, y2: y, style: 'centre' },
        {
          kind: 'dimension',
          x1: x,
          y1: y + half + gap + wall,
          x2: x + long,
          y2: y + half + gap + wall,
          offset: -20,
          of: 'length',
        },
        {
          kind: 'dimension',
          x1: x + long + 30,
          y1: y - half,
          x2: x + long + 30,
          y2: y + half,
          offset: 30,
          of: 'diameter',
        },
      ],
      exaggeration: 'clearance drawn large, without grooves',
    };
  },
});
