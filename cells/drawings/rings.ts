import type { Drawing, Fill, Shape } from '../record/cell.ts';

/** Two rings one in the other, cut along their axis. Diameters in metres; names are those of the cell's inputs and outputs. */
export interface RingPair {
  /** Bore of the inner ring; 0 for a solid shaft. */
  bore: number | undefined;
  contact: number | undefined;
  /** Outside of the outer ring; absent where it is not known: drawn broken off. */
  outside?: number | undefined;
  /** Interference before joining, or clearance where below zero; diametral. Absent: drawn as touching. */
  misfit?: number | undefined;
  names: { bore?: string; contact: string; outside?: string; misfit?: string };
  labels?: { inner?: string; outer?: string };
}

const WIDTH = 340;
const HEIGHT = 240;
const AXIS = HEIGHT / 2;
/** Of the section, between its ends. */
const LEFT = 110;
const RIGHT = 230;
const TALL = 190;
/** What a misfit is drawn as, whatever its size. */
const SHOWN = 5;

const known = (x: number | undefined): x is number => x !== undefined && Number.isFinite(x);

/** The same member above and below the axis, from one radius to another (drawing units); in one piece where it is solid. */
const member = (inner: number, outer: number, left: number, right: number, fill: Fill): Shape[] =>
  inner === 0
    ? [{ kind: 'rect', x: left, y: AXIS - outer, width: right - left, height: 2 * outer, fill }]
    : [AXIS - outer, AXIS + inner].map((y) => ({
        kind: 'rect',
        x: left,
        y,
        width: right - left,
        height: outer - inner,
        fill,
      }));

/** To one figure, as people say it: 200 times. */
export const roundly = (x: number): number => {
  const ten = 10 ** Math.floor(Math.log10(x));
  return Math.round(x / ten) * ten;
};

const across = (x: number, half: number, offset: number, of: string): Shape => ({
  kind: 'dimension',
  x1: x,
  y1: AXIS - half,
  x2: x,
  y2: AXIS + half,
  offset,
  of,
});

/** Undefined until the sizes are known and possible: bore < contact < outside. */
export const ringPair = (pair: RingPair): Drawing | undefined => {
  const { bore, contact, outside, misfit, names } = pair;
  if (!known(bore) || !known(contact) || bore < 0 || bore >= contact) return undefined;
  if (outside !== undefined && !(outside > contact)) return undefined;
  const rim = outside ?? contact * 1.7;
  const scale = TALL / rim;
  const [hole, joint, edge] = [bore, contact, rim].map((d) => (d * scale) / 2) as [number, number, number];
  const loose = known(misfit) && misfit < 0;
  const shift = known(misfit) && misfit !== 0 ? SHOWN / 2 : 0;
  const innerOutside = loose ? joint - shift : joint + shift;
  const outerBore = loose ? joint + shift : joint - shift;
  const shapes: Shape[] = [
    ...member(outerBore, edge, LEFT, RIGHT, 'section-b'),
    ...member(hole, innerOutside, LEFT - 14, RIGHT - 14, 'section-a'),
    { kind: 'line', x1: LEFT - 30, y1: AXIS, x2: RIGHT + 16, y2: AXIS, style: 'centre' },
    across(LEFT - 14, innerOutside, -26, names.contact),
  ];
  if (names.bore && hole > 0) shapes.push(across(LEFT - 14, hole, -62, names.bore));
  if (names.outside && outside !== undefined) shapes.push(across(RIGHT, edge, 26, names.outside));
  if (outside === undefined)
    for (const y of [AXIS - edge, AXIS + edge])
      shapes.push({ kind: 'line', x1: LEFT, y1: y, x2: RIGHT, y2: y, style: 'hidden' });
  if (names.misfit && shift > 0)
    shapes.push({
      kind: 'dimension',
      x1: RIGHT - 4,
      y1: AXIS - Math.max(innerOutside, outerBore),
      x2: RIGHT - 4,
      y2: AXIS - Math.min(innerOutside, outerBore),
      offset: 64,
      of: names.misfit,
    });
  if (pair.labels?.inner)
    shapes.push({
      kind: 'text',
      x: (LEFT + RIGHT) / 2 - 14,
      y: AXIS - 6,
      text: pair.labels.inner,
      anchor: 'middle',
    });
  if (pair.labels?.outer)
    shapes.push({
      kind: 'text',
      x: (LEFT + RIGHT) / 2,
      y: HEIGHT - 8,
      text: pair.labels.outer,
      anchor: 'middle',
    });
  const times = shift > 0 ? roundly(SHOWN / (Math.abs(misfit as number) * scale)) : 0;
  return {
    width: WIDTH,
    height: HEIGHT,
    shapes,
    ...(times > 1
      ? { exaggeration: `${loose ? 'clearance' : 'interference'} drawn about ${times} times its size` }
      : {}),
  };
};
