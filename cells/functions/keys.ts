import type { Motion, Movement, TradeFunction } from '../record/cell.ts';
import {
  inchKey,
  inchKeyDepths,
  keySteps,
  parallelKey,
  type WoodruffKey,
  woodruffKey,
} from '../tables/keys.ts';
import { isProblem, type TableProblem } from '../tables/table.ts';

interface KeyAndSeat {
  width: number;
  height: number;
  /** Below the crown of the shaft, and above the crown of the bore. */
  shaftDepth: number;
  hubDepth: number;
  /** For a taper key at its thick end. */
  taperHubDepth?: number;
}

const inch = (shaft: number, form: 'square' | 'rectangular'): KeyAndSeat | TableProblem => {
  const key = inchKey(shaft, form);
  if (isProblem(key)) return key;
  const depths = inchKeyDepths(shaft, key);
  return isProblem(depths)
    ? depths
    : {
        ...key,
        shaftDepth: shaft - depths.S,
        hubDepth: depths.T - shaft,
        taperHubDepth: depths.taper - shaft,
      };
};

const keyFor = (system: string, shaft: number): KeyAndSeat | TableProblem => {
  if (system === 'metric') return parallelKey(shaft);
  if (system === 'inch-square') return inch(shaft, 'square');
  if (system === 'inch-rectangular') return inch(shaft, 'rectangular');
  return { problem: `There are no keys "${system}": inch-square, inch-rectangular or metric.` };
};

const source = 'ANSI/ASME B17.1-1967 (R2013); DIN 6885-1, DIN 6886: the table of keys';

const ofKey = (
  name: string,
  purpose: string,
  read: (key: KeyAndSeat) => number | { message: string },
  movement: Movement,
): TradeFunction => ({
  name,
  purpose,
  takes: [
    { name: 'system', text: true },
    { name: 'shaft', quantity: 'length' },
  ],
  gives: 'length',
  compute: (system, shaft) => {
    const found = keyFor(String(system), Number(shaft));
    return isProblem(found) ? { message: found.problem } : read(found);
  },
  movement,
  source,
});

/** One figure a row of the table, none less than the one before. */
const section: Movement = { moves: { shaft: 'rising' }, steps: true };
/** Over an inch shaft's crown the depths change with its size between two rows, too. */
const depth = (motion: Motion): Movement => ({ moves: { shaft: motion }, jumps: () => keySteps });

const ofWoodruff = (name: string, purpose: string, read: (key: WoodruffKey) => number): TradeFunction => ({
  name,
  purpose,
  takes: [{ name: 'key', text: true }],
  gives: 'length',
  compute: (key) => {
    const found = woodruffKey(String(key));
    return isProblem(found) ? { message: found.problem } : read(found);
  },
  source: 'ANSI/ASME B17.2-1967 (R2013), Woodruff keys, full radius',
});

const functions: readonly TradeFunction[] = [
  ofWoodruff('WOODRUFFWIDTH', 'Width of a Woodruff key.', ({ width }) => width),
  ofWoodruff('WOODRUFFDISC', 'Diameter of the disc a Woodruff key is cut from.', ({ disc }) => disc),
  ofWoodruff('WOODRUFFHEIGHT', 'Height of a Woodruff key.', ({ height }) => height),
  ofWoodruff('WOODRUFFSEAT', 'Depth of its seat in the shaft, at the side.', ({ shaftDepth }) => shaftDepth),
  ofWoodruff('WOODRUFFWAY', 'Depth of its keyway in the hub, at the side.', ({ hubDepth }) => hubDepth),
  ofKey('KEYWIDTH', 'Width of the standard key of a shaft.', (key) => key.width, section),
  ofKey('KEYHEIGHT', 'Height of the standard key of a shaft.', (key) => key.height, section),
  ofKey(
    'KEYSEAT',
    'Depth of the keyseat below the crown of the shaft.',
    (key) => key.shaftDepth,
    depth('falling'),
  ),
  ofKey('KEYWAY', 'Depth of the keyway above the crown of the bore.', (key) => key.hubDepth, depth('rising')),
  ofKey(
    'KEYWAYTAPER',
    'Depth of the keyway for a taper key at its thick end, above the crown of the bore.',
    (key) => key.taperHubDepth ?? { message: 'DIN 6886 has no taper key of that width: up to 50 mm.' },
    depth('rising'),
  ),
];

export default functions;
