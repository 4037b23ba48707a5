import { annulus } from '../drawings/annulus.ts';
import { defineCell } from '../record/cell.ts';
import { cutting } from '../record/hazards.ts';

export default defineCell({
  key: 'oil-hole',
  edition: 1,
  title: 'Oil hole through a wall',
  purpose:
    'Where a hole drilled at an angle or off the axis comes out in the bore, the ellipse it leaves there, and the wall to its neighbour at any depth.',
  group: 'machine work',
  inputs: [
    { name: 'outside', label: 'outside diameter', quantity: 'length', sensible: ['5 mm', '2 m'] },
    { name: 'bore', label: 'bore', quantity: 'length', sensible: ['3 mm', '2 m'] },
    { name: 'drill', label: 'hole', quantity: 'length', sensible: ['0.5 mm', '80 mm'] },
    {
      name: 'lean',
      label: 'hole leans along the axis by',
      quantity: 'angle',
      default: '0 deg',
      sensible: ['0 deg', '70 deg'],
      hint: 'From square to the axis.',
      source: 'square to the axis',
    },
    {
      name: 'offset',
      label: 'axis of the hole passes the axis of the bush at',
      quantity: 'length',
      default: '0 mm',
      sensible: ['0 mm', '1 m'],
      hint: 'To one side, seen along the bush. 0: it aims at the middle.',
      source: 'aimed at the middle',
    },
    {
      name: 'apart',
      label: 'angle to the next hole, round the bush',
      quantity: 'angle',
      optional: true,
      sensible: ['1 deg', '180 deg'],
      hint: 'Of the same size, and drilled the same way.',
    },
    {
      name: 'along',
      label: 'next hole along the bush by',
      quantity: 'length',
      default: '0 mm',
      sensible: ['0 mm', '1 m'],
      source: 'in one row round the bush',
    },
    {
      name: 'depth',
      label: 'depth below the outside to look at',
      quantity: 'length',
      optional: true,
      sensible: ['0 mm', '500 mm'],
      hint: 'Blank: at the bore.',
    },
    {
      name: 'least_wall',
      label: 'least wall between holes wanted',
      quantity: 'length',
      optional: true,
      sensible: ['0.2 mm', '100 mm'],
    },
  ],
  outputs: [
    {
      name: 'length_drilled',
      label: 'length drilled, along the hole',
      quantity: 'length',
      formula: '=(SQRT((outside / 2) ^ 2 - offset ^ 2) - SQRT((bore / 2) ^ 2 - offset ^ 2)) / COS(lean)',
      basis: 'geometry',
      hint: 'Along its axis, from the outside to where it meets the bore.',
    },
    {
      name: 'shift_along',
      label: 'comes out further along the bush by',
      quantity: 'length',
      formula: '=length_drilled * SIN(lean)',
      basis: 'geometry',
      face: true,
    },
    {
      name: 'turn',
      label: 'comes out turned round the bush by',
      quantity: 'angle',
      formula: '=ASIN(offset / (bore / 2)) - ASIN(offset / (outside / 2))',
      basis: 'geometry',
      display: { in: 'deg', mm: 'deg' },
      hint: 'Against where it went in.',
    },
    {
      name: 'mouth_along',
      label: 'mouth in the bore, along the bush',
      quantity: 'length',
      formula: '=drill / COS(lean)',
      basis: 'geometry',
      face: true,
      hint: 'An ellipse where it leans.',
    },
    {
      name: 'mouth_round',
      label: 'mouth in the bore, round it',
      quantity: 'length',
      formula:
        '=bore / 2 * (ASIN(MIN(1; (offset + drill / 2) / (bore / 2))) - ASIN(MAX(-1; (offset - drill / 2) / (bore / 2))))',
      basis: 'geometry',
      face: true,
      hint: 'Along the arc.',
    },
    {
      name: 'at_radius',
      label: 'radius looked at',
      quantity: 'length',
      formula: '=IF(ISBLANK(depth); bore / 2; outside / 2 - depth)',
      basis: 'geometry',
    },
    {
      name: 'spacing',
      label: 'axes of neighbours apart, at that depth',
      quantity: 'length',
      formula: '=SQRT((2 * at_radius * SIN(apart / 2)) ^ 2 + along ^ 2)',
      basis: 'geometry',
      hint: 'Straight across. Holes round a bush draw together toward the bore.',
    },
    {
      name: 'wall_between',
      label: 'wall between neighbours, at that depth',
      quantity: 'length',
      formula:
        '=spacing - drill * SQRT((2 * at_radius * SIN(apart / 2)) ^ 2 + (along / COS(lean)) ^ 2) / MAX(spacing; 1e-9 m)',
      basis: 'geometry',
      face: true,
      limits: { lower: '=least_wall' },
      hint: 'Least at the bore. Where they lean and are staggered, a little under the true least.',
    },
  ],
  validity: [
    {
      holds: '=AND(bore > 0 m; outside > bore; drill > 0 m)',
      otherwise: 'Hole and bore are above zero, and the outside larger than the bore.',
      grade: 'error',
    },
    {
      holds: '=AND(lean >= 0 deg; lean < 80 deg)',
      otherwise: 'The hole leans from 0 to below 80 degrees.',
      grade: 'error',
    },
    {
      holds: '=AND(offset >= 0 m; offset + drill / 2 < bore / 2)',
      otherwise:
        'The hole passes so far to the side that it grazes or misses the bore: its offset with half its size is less than half the bore.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(apart); 1 > 0; AND(apart > 0 deg; apart <= 180 deg))',
      otherwise: 'The angle to the next hole lies above 0 and not above 180 degrees.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(depth); 1 > 0; AND(depth >= 0 m; depth <= outside / 2 - bore / 2))',
      otherwise: 'The depth lies within the wall.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(apart); 1 > 0; wall_between > 0 m)',
      otherwise: 'The holes run into each other at that depth.',
      grade: 'caution',
    },
    {
      holds: '=lean <= 45 deg',
      otherwise:
        'A drill skids on a face leaning that much: spot it with an end mill, or drill through a guide.',
      grade: 'caution',
    },
    {
      holds: '=drill <= bore / 3',
      otherwise:
        'Large for its bore: the mouth takes much of the bearing, and its edge cuts the film. Keep it out of where the load is.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'Straight holes of one size. The lean is seen square to the plane through hole and bush; the offset is in the plane across it.',
    'Where a hole both leans and passes to one side, neighbours lean alike.',
  ],
  sources: [
    'No published worked example was found: the examples are held by a second method of our own',
    'Geometry of a line and a cylinder; ellipse of a slanted section',
  ],
  cautions: [
    'A drill that breaks through at a slant grabs: clamp the bush in a block, feed lightly at the end, goggles.',
    'Burrs at the mouth tear the film and the journal: round the edge, and wash the chips out of the ways before assembly.',
    cutting,
  ],
  examples: [
    {
      title: 'Bush 60/50 mm, hole of 4 mm leaning 30 degrees',
      source:
        'recomputed by coordinates: 5 mm of wall over cos 30 = 5.7735 mm, sin 30 of it 2.88675 mm; ellipse 4 / cos 30 = 4.6188 mm; round the bore 50 asin(2/25) = 4.00427 mm',
      grade: 'recomputed',
      inputs: { outside: '60 mm', bore: '50 mm', drill: '4 mm', lean: '30 deg', apart: '20 deg' },
      expect: {
        length_drilled: { value: '5.773503 mm', within: 1e-6 },
        shift_along: { value: '2.886751 mm', within: 1e-6 },
        mouth_along: { value: '4.618802 mm', within: 1e-6 },
        mouth_round: { value: '4.004278 mm', within: 1e-5 },
        spacing: { value: '8.682409 mm', within: 1e-6 },
        wall_between: { value: '4.682409 mm', within: 1e-6 },
      },
    },
    {
      title: 'The same hole straight, 15 mm to one side: where it comes out',
      source:
        'recomputed by coordinates: from (15, 25.98) to (15, 20) mm: 5.98076 mm long; asin(15/25) - asin(15/30) = 6.8699 degrees',
      grade: 'recomputed',
      inputs: { outside: '60 mm', bore: '50 mm', drill: '4 mm', offset: '15 mm' },
      expect: {
        length_drilled: { value: '5.980762 mm', within: 1e-6 },
        turn: { value: '6.869898 deg', within: 1e-6 },
        mouth_round: { value: '5.022792 mm', within: 1e-4 },
      },
    },
  ],
  drawing: ({ outside, bore, drill, offset, apart }) => {
    if (outside === undefined || bore === undefined || drill === undefined) return undefined;
    if (!(bore > 0 && outside > bore && drill > 0 && drill < bore)) return undefined;
    const off = offset === undefined || !(offset >= 0 && offset + drill / 2 < bore / 2) ? 0 : offset;
    const scale = 180 / outside;
    const [x, y] = [160, 112];
    if (!Number.isFinite(scale)) return undefined;
    const turn = apart === undefined || !Number.isFinite(apart) ? undefined : apart;
    const hole = (angle: number) => {
      const [s, c] = [Math.sin(angle), Math.cos(angle)];
      const at = (side: number, out: number): string => {
        const [px, py] = [side * scale, out * scale];
        return `${x + px * c + py * s} ${y + px * s - py * c}`;
      };
      const edge = (side: number, d: number): number => Math.sqrt(Math.max((d / 2) ** 2 - side ** 2, 0));
      const [l, r] = [off - drill / 2, off + drill / 2];
      return `M${at(l, edge(l, bore) * 0.98)}L${at(l, edge(l, outside) * 1.02)}L${at(r, edge(r, outside) * 1.02)}L${at(r, edge(r, bore) * 0.98)}Z`;
    };
    return {
      width: 320,
      height: 240,
      shapes: [
        annulus(x, y, (outside * scale) / 2, (bore * scale) / 2, 'section-a'),
        { kind: 'path', d: hole(0), fill: 'paper' },
        ...(turn === undefined ? [] : [{ kind: 'path' as const, d: hole(turn), fill: 'paper' as const }]),
        { kind: 'line', x1: 55, y1: y, x2: 265, y2: y, style: 'centre' },
        { kind: 'line', x1: x, y1: 8, x2: x, y2: 218, style: 'centre' },
        {
          kind: 'dimension',
          x1: x - (bore * scale) / 2,
          y1: y,
          x2: x + (bore * scale) / 2,
          y2: y,
          offset: 110,
          of: 'bore',
        },
      ],
    };
  },
});
