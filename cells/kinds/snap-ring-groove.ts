import { defineCell } from '../record/cell.ts';
import { cutting, licensed } from '../record/hazards.ts';

export default defineCell({
  key: 'snap-ring-groove',
  edition: 1,
  title: 'Groove of a snap ring',
  purpose:
    'Groove, ring and shoulder of a snap ring on a shaft or in a bore, its play endways, and the thrust the groove holds.',
  group: 'machine work',
  inputs: [
    {
      name: 'fits',
      label: 'ring for',
      choice: 'snap-rings',
      optional: true,
      hint: 'Blank for a ring that is not in the table, an inch one: enter its sizes below.',
    },
    {
      name: 'own_size',
      label: 'size of shaft or bore, of a ring not in the table',
      quantity: 'length',
      optional: true,
      sensible: ['2 mm', '250 mm'],
      hint: 'With it groove, width of the groove and thickness of the ring by its own table.',
    },
    {
      name: 'own_width',
      label: 'width of the groove, another than the table',
      quantity: 'length',
      optional: true,
      sensible: ['0.3 mm', '8 mm'],
    },
    {
      name: 'groove_cut',
      label: 'groove diameter, another than the table',
      quantity: 'length',
      optional: true,
      sensible: ['5 mm', '150 mm'],
      hint: 'From the ring’s maker, or as the old groove is.',
    },
    {
      name: 'ring',
      label: 'ring thickness, another than the table',
      quantity: 'length',
      optional: true,
      sensible: ['0.5 mm', '6 mm'],
    },
    {
      name: 'shoulder',
      label: 'shoulder there is behind the groove',
      quantity: 'length',
      optional: true,
      sensible: ['0.3 mm', '100 mm'],
      hint: 'From the groove to the end of shaft or bore.',
    },
    {
      name: 'yield',
      label: 'yield strength of the grooved part',
      quantity: 'pressure',
      optional: true,
      sensible: ['20 MPa', '1500 MPa'],
    },
    { name: 'thrust', label: 'thrust on the ring', quantity: 'force', optional: true },
    {
      name: 'least_margin',
      label: 'least safety factor you accept',
      quantity: 'number',
      default: '2',
      sensible: ['1', '6'],
      source: 'common practice, no source; with shock more',
    },
  ],
  outputs: [
    {
      name: 'size',
      label: 'nominal size of shaft or bore',
      quantity: 'length',
      formula: '=IF(ISBLANK(own_size); RINGSIZE(fits); own_size)',
      basis: 'geometry',
    },
    {
      name: 'groove',
      label: 'groove diameter',
      quantity: 'length',
      formula: '=IF(ISBLANK(groove_cut); RINGGROOVE(fits); groove_cut)',
      basis: 'geometry',
      ofPart: true,
      face: true,
    },
    {
      name: 'groove_depth',
      label: 'groove deep, each side',
      quantity: 'length',
      formula: '=ABS(size - groove) / 2',
      basis: 'geometry',
    },
    {
      name: 'width',
      label: 'groove width, least',
      quantity: 'length',
      formula: '=IF(ISBLANK(own_width); RINGWIDTH(fits); own_width)',
      basis: 'geometry',
      ofPart: true,
      face: true,
    },
    {
      name: 'play',
      label: 'play of the ring in its groove',
      quantity: 'length',
      formula: '=width - IF(ISBLANK(ring); RINGTHICKNESS(fits); ring)',
      basis: 'geometry',
      hint: 'It adds to the end float.',
    },
    {
      name: 'shoulder_wanted',
      label: 'shoulder wanted behind the groove',
      quantity: 'length',
      formula: '=IF(ISBLANK(own_size); RINGSHOULDER(fits); 3 * groove_depth)',
      basis: 'geometry',
    },
    {
      name: 'shoulder_over',
      label: 'shoulder more than wanted',
      quantity: 'length',
      formula: '=shoulder - shoulder_wanted',
      basis: 'geometry',
      limits: { lower: '=0 m' },
    },
    {
      name: 'side',
      label: 'side of the groove that bears',
      quantity: 'area',
      formula: '=PI() / 4 * ABS(size ^ 2 - groove ^ 2)',
      basis: 'geometry',
      display: { in: 'in2', mm: 'mm2' },
    },
    {
      name: 'side_holds',
      label: 'thrust at which the side of the groove yields',
      quantity: 'force',
      formula: '=yield * side / 1.2',
      basis: 'model',
      hint: 'A sixth less than the side alone would hold, as DIN 471 and DIN 472 reckon for the shoulder they want: it bends.',
    },
    {
      name: 'shoulder_holds',
      label: 'thrust at which the shoulder shears off',
      quantity: 'force',
      formula: '=0.577 * yield * PI() * groove * shoulder',
      basis: 'model',
      hint: 'Shear strength as 0.577 of the yield strength.',
    },
    {
      name: 'thrust_held',
      label: 'thrust the groove holds, the weaker of both',
      quantity: 'force',
      formula: '=IF(ISBLANK(shoulder); side_holds; MIN(side_holds; shoulder_holds))',
      basis: 'model',
      face: true,
    },
    {
      name: 'margin',
      label: 'safety factor',
      quantity: 'number',
      formula: '=thrust_held / thrust',
      basis: 'model',
      limits: { lower: '=least_margin' },
    },
  ],
  validity: [
    {
      holds:
        '=IF(ISBLANK(groove_cut); 1 > 0; AND(groove_cut > 0 m; ABS(groove_cut - IF(ISBLANK(own_size); RINGSIZE(fits); own_size)) > 0 m))',
      otherwise: 'The groove is above zero, and another diameter than shaft or bore.',
      grade: 'error',
    },
    {
      holds:
        '=IF(OR(ISBLANK(groove_cut); NOT(ISBLANK(own_size))); 1 > 0; (groove_cut - RINGSIZE(fits)) * (RINGGROOVE(fits) - RINGSIZE(fits)) > 0 m2)',
      otherwise: 'A groove on a shaft is smaller than the shaft, one in a bore larger than the bore.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(own_size); 1 > 0; own_size > 0 m)',
      otherwise: 'The size of shaft or bore is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(own_width); 1 > 0; own_width > 0 m)',
      otherwise: 'The width of the groove is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(yield); 1 > 0; yield > 0 Pa)',
      otherwise: 'A strength is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(thrust); 1 > 0; thrust > 0 N)',
      otherwise: 'The thrust is above zero.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(shoulder); 1 > 0; shoulder > 0 m)',
      otherwise: 'The shoulder is above zero.',
      grade: 'error',
    },
    {
      holds: '=play > 0 m',
      otherwise: 'The ring does not go into its groove.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The part that bears has a sharp corner: one with a chamfer or a radius dishes the ring, and it holds far less.',
    'The ring bears all round: one pushed on from the side bears on part of its groove, and holds what its own table says.',
    'Thrust without shock; how fast a ring on a shaft may turn before it opens, its maker says.',
  ],
  sources: [
    'DIN 471:2011-04 and DIN 472: sizes, grooves and shoulders, as printed in two tables each',
    "Inch rings of bores: sizes of their own, shoulder three times the depth, as Machinery's Handbook, 31e, Retaining Rings, Table 12 prints it",
    'The side of a groove holds yield strength times its area over 1.2 where the shoulder is three times its depth: what the load figures of both tables come to, at 200 MPa',
    "Shear at 0.577 of the yield strength: Budynas & Nisbett, Shigley's Mechanical Engineering Design, 9e (2011), sec. 5-5",
  ],
  cautions: [
    'Snap rings fly off the pliers: goggles, a hand or cloth over the ring, and nobody in line.',
    'A spring or a load behind the ring drives the parts out as it comes off: hold them in a press or a clamp first.',
    cutting,
    licensed,
  ],
  examples: [
    {
      title: 'Shaft of 18 mm, at 200 MPa',
      source: 'DIN 471:2011-04: ring 1.2, groove 17.0 x 1.3 mm, shoulder 1.5 mm, groove holds 4.58 kN',
      grade: 'seen',
      inputs: { fits: 'shaft-18', yield: '200 MPa' },
      expect: {
        groove: { value: '17 mm', within: 1e-9 },
        width: { value: '1.3 mm', within: 1e-9 },
        play: { value: '0.1 mm', within: 1e-6 },
        shoulder_wanted: { value: '1.5 mm', within: 1e-9 },
        side_holds: { value: '4.58 kN', within: '0.005 kN' },
      },
    },
    {
      title: 'Bore of 12 mm, at 200 MPa',
      source: 'DIN 472: ring 1.0, groove 12.5 x 1.1 mm, shoulder 0.8 mm, groove holds 1.60 kN',
      grade: 'seen',
      inputs: { fits: 'bore-12', yield: '200 MPa' },
      expect: {
        groove: { value: '12.5 mm', within: 1e-9 },
        width: { value: '1.1 mm', within: 1e-9 },
        shoulder_wanted: { value: '0.8 mm', within: 1e-9 },
        side_holds: { value: '1.60 kN', within: '0.005 kN' },
      },
    },
    {
      title: 'Shaft of 25 mm, 5 kN of thrust',
      source: 'by hand: side pi/4 x (25^2 - 23.9^2) = 42.25 mm2; 300 MPa x 42.25 / 1.2 = 10.56 kN; over 5 kN',
      grade: 'recomputed',
      inputs: { fits: 'shaft-25', shoulder: '2 mm', yield: '300 MPa', thrust: '5 kN' },
      expect: {
        side: { value: '42.25 mm2', within: 1e-3 },
        thrust_held: { value: '10.56 kN', within: 1e-3 },
        margin: { value: '2.112', within: 1e-3 },
      },
    },
    {
      title: 'Bore of 52 mm: the shoulder shears before the side yields',
      source:
        'recomputed: a ring of the housing 0.5 mm thick at 55 mm, pi x 55 x 0.5 = 86.39 mm2 at 0.577 x 200 MPa = 9.970 kN; side pi/4 x (55^2 - 52^2) = 252.1 mm2, 42.0 kN',
      grade: 'recomputed',
      inputs: { fits: 'bore-52', shoulder: '0.5 mm', yield: '200 MPa' },
      expect: {
        groove_depth: { value: '1.5 mm', within: 1e-9 },
        shoulder_over: { value: '-4 mm', within: 1e-9 },
        thrust_held: { value: '9.970 kN', within: 1e-3 },
      },
    },
  ],
  drawing: ({ size, groove, width, shoulder_wanted: wanted, shoulder }) => {
    if (size === undefined || groove === undefined || width === undefined || wanted === undefined)
      return undefined;
    if (!(size > 0 && groove > 0 && width > 0 && wanted > 0) || size === groove) return undefined;
    const onShaft = groove < size;
    const behind = shoulder !== undefined && shoulder > 0 ? shoulder : wanted;
    const deep = Math.abs(size - groove) / 2;
    const scale = Math.min(50 / Math.max(behind, width), 34 / deep);
    if (!Number.isFinite(scale)) return undefined;
    const [w, d] = [width * scale, deep * scale];
    // Groove and shoulder to scale; the part itself broken off.
    const end = 212;
    const right = end - behind * scale;
    const left = right - w;
    const surface = onShaft ? 60 : 110;
    const floor = onShaft ? surface + d : surface - d;
    const far = onShaft ? 150 : 20;
    const ring = left + 0.08 * w;
    const proud = onShaft ? surface - 16 : surface + 16;
    return {
      width: 300,
      height: 190,
      shapes: [
        {
          kind: 'path',
          d: `M60 ${far}L60 ${surface}L${left} ${surface}L${left} ${floor}L${right} ${floor}L${right} ${surface}L${end} ${surface}L${end} ${far}Z`,
          fill: 'section-a',
        },
        {
          kind: 'rect',
          x: ring,
          y: Math.min(floor, proud),
          width: 0.9 * w,
          height: Math.abs(proud - floor),
          fill: 'section-b',
        },
        { kind: 'dimension', x1: left, y1: far, x2: right, y2: far, offset: onShaft ? 24 : -24, of: 'width' },
        {
          kind: 'dimension',
          x1: right,
          y1: far,
          x2: end,
          y2: far,
          offset: onShaft ? -22 : 22,
          of: shoulder !== undefined && shoulder > 0 ? 'shoulder' : 'shoulder_wanted',
        },
        { kind: 'dimension', x1: end, y1: surface, x2: end, y2: floor, offset: 30, of: 'groove_depth' },
      ],
      exaggeration: 'groove, ring and shoulder large beside the part',
    };
  },
});
