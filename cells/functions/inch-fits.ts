import type { TradeFunction } from '../record/cell.ts';
import { type InchFit, inchFit, inchSteps } from '../tables/b41/b41.ts';
import { isProblem } from '../tables/table.ts';

const deviation = (name: string, purpose: string, read: (fit: InchFit) => number): TradeFunction => ({
  name,
  purpose,
  takes: [
    { name: 'basic size', quantity: 'length' },
    { name: 'class', text: true },
  ],
  gives: 'length',
  compute: (size, className) => {
    const found = inchFit(Number(size), String(className));
    return isProblem(found) ? { message: found.problem } : read(found);
  },
  movement: { moves: { 'basic size': 'rising' }, jumps: () => inchSteps, steps: true },
  source: 'ANSI/ASME B4.1-1967 (R2009)',
});

const functions: readonly TradeFunction[] = [
  deviation('INCHHOLEUPPER', 'Upper deviation of the hole of an inch fit class.', (fit) => fit.hole.upper),
  deviation('INCHHOLELOWER', 'Lower deviation of the hole of an inch fit class.', (fit) => fit.hole.lower),
  deviation('INCHSHAFTUPPER', 'Upper deviation of the shaft of an inch fit class.', (fit) => fit.shaft.upper),
  deviation('INCHSHAFTLOWER', 'Lower deviation of the shaft of an inch fit class.', (fit) => fit.shaft.lower),
];

export default functions;
