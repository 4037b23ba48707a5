import type { CellInput, CellOutput } from '../cell.ts';

/** Friction by the table, or a figure of the shop's own; neither: any pair, 0.04 to 0.20. */
export const frictionInputs: readonly CellInput[] = [
  {
    name: 'friction_pair',
    label: 'which metals rub, dry or oiled',
    choice: 'friction',
    optional: true,
    hint: 'Blank, and no figure of your own below: any pair, 0.04 to 0.20.',
  },
  {
    name: 'friction',
    label: 'friction, your own figure',
    quantity: 'number',
    optional: true,
    sensible: ['0.03', '0.4'],
  },
];

/** The friction taken, `ofPair` being the formula of what the table has for the pair. */
export const frictionOutputs = (ofPair: string): readonly CellOutput[] => [
  {
    name: 'pair_friction',
    label: 'friction of that pair, pressed',
    quantity: 'number',
    table: { choice: 'friction_pair', column: 'press' },
  },
  {
    name: 'friction_taken',
    label: 'friction taken',
    quantity: 'number',
    formula: `=IF(ISBLANK(friction); IF(ISBLANK(friction_pair); 0.12; ${ofPair}); friction)`,
    spread: {
      low: '=IF(AND(ISBLANK(friction); ISBLANK(friction_pair)); -0.08; 0)',
      high: '=IF(AND(ISBLANK(friction); ISBLANK(friction_pair)); 0.08; 0)',
      distribution: 'rectangular',
      label: 'friction, pair not said',
    },
  },
];
