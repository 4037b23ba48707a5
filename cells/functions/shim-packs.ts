import type { TradeFunction } from '../record/cell.ts';
import { thickestPack } from '../tables/shim-packs.ts';

/** Beyond it a pack is a spring, and trying every pack takes long. */
const MOST = 12;

const functions: readonly TradeFunction[] = [
  {
    name: 'SHIMCOUNT',
    purpose:
      'How many of one of four shims stand in the thickest pack, of at most so many shims, that is no thicker than wanted. A shim of 0 is not at hand.',
    takes: [
      { name: 'which', quantity: 'number' },
      { name: 'wanted', quantity: 'length' },
      { name: 'most', quantity: 'number' },
      { name: 'shim_1', quantity: 'length' },
      { name: 'shim_2', quantity: 'length' },
      { name: 'shim_3', quantity: 'length' },
      { name: 'shim_4', quantity: 'length' },
    ],
    gives: 'number',
    compute: (which, wanted, most, ...sizes) => {
      const shims = sizes.map(Number);
      if (!Number.isInteger(most) || Number(most) < 1 || Number(most) > MOST)
        return { message: `A pack has a whole number of shims, from 1 to ${MOST}.` };
      if (shims.some((shim) => shim < 0)) return { message: 'A shim is not thinner than nothing.' };
      const at = Number(which) - 1;
      if (shims[at] === undefined) return { message: 'There are four shims, 1 to 4.' };
      if (shims[at] === 0) return 0;
      const there = shims.flatMap((shim, i) => (shim > 0 ? [{ shim, i }] : []));
      const { counts } = thickestPack(
        Number(wanted),
        Number(most),
        there.map(({ shim }) => shim),
      );
      return counts[there.findIndex(({ i }) => i === at)] ?? 0;
    },
    // Which pack is the thickest goes back and forth with every size.
    movement: {
      steps: true,
      bounds: (_which, _wanted, most) =>
        typeof most === 'object' && most[1] <= MOST
          ? [0, most[1]]
          : { message: 'A pack has no such number of shims.' },
    },
    source: 'every pack of these shims tried',
  },
];

export default functions;
