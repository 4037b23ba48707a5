import type { TradeFunction } from '../record/cell.ts';
import { type SnapRing, snapRing } from '../tables/snap-rings.ts';
import { isProblem } from '../tables/table.ts';

const ofRing = (name: string, purpose: string, read: (ring: SnapRing) => number): TradeFunction => ({
  name,
  purpose,
  takes: [{ name: 'ring', text: true }],
  gives: 'length',
  compute: (ring) => {
    const found = snapRing(String(ring));
    return isProblem(found) ? { message: found.problem } : read(found);
  },
  source: 'DIN 471:2011-04, DIN 472',
});

const functions: readonly TradeFunction[] = [
  ofRing('RINGSIZE', 'Size of the shaft or bore a snap ring is for.', ({ size }) => size),
  ofRing('RINGGROOVE', 'Diameter of the groove of a snap ring.', ({ groove }) => groove),
  ofRing('RINGWIDTH', 'Least width of the groove of a snap ring.', ({ width }) => width),
  ofRing('RINGTHICKNESS', 'Thickness of a snap ring.', ({ thickness }) => thickness),
  ofRing('RINGSHOULDER', 'Least shoulder behind the groove of a snap ring.', ({ shoulder }) => shoulder),
];

export default functions;
