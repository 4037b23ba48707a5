import type { CellInput, CellOutput, Validity } from '../record/cell.ts';

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
    basis: 'model',
    table: { choice: 'friction_pair', column: 'press' },
  },
  {
    name: 'friction_taken',
    label: 'friction taken',
    quantity: 'number',
    basis: 'model',
    formula: `=IF(ISBLANK(friction); IF(ISBLANK(friction_pair); 0.12; ${ofPair}); friction)`,
    spread: {
      low: '=IF(AND(ISBLANK(friction); ISBLANK(friction_pair)); -0.08; 0)',
      high: '=IF(AND(ISBLANK(friction); ISBLANK(friction_pair)); 0.08; 0)',
      distribution: 'rectangular',
      label: 'friction, pair not said',
    },
  },
];

/** A joint put together by heat or cold grips better than one pressed. */
export const joinedInput: CellInput = {
  name: 'joined',
  label: 'how they are joined',
  choice: 'joining',
  optional: true,
  hint: 'A shrunk joint grips better than a pressed one. Blank: as pressed, the lower figure.',
};

export const joinedFriction: readonly CellOutput[] = [
  {
    name: 'shrunk',
    label: 'joined by heat or cold',
    quantity: 'number',
    basis: 'model',
    table: { choice: 'joined', column: 'shrunk' },
    hint: '1 where it is, 0 where it is pressed.',
  },
  {
    name: 'shrunk_friction',
    label: 'friction of that pair, shrunk',
    quantity: 'number',
    basis: 'model',
    table: { choice: 'friction_pair', column: 'shrink' },
  },
  ...frictionOutputs('IF(ISBLANK(joined); pair_friction; IF(shrunk > 0.5; shrunk_friction; pair_friction))'),
];

export const frictionHolds: Validity = {
  holds: '=IF(ISBLANK(friction); 1 > 0; AND(friction > 0; friction < 1))',
  otherwise: 'Friction lies between 0 and 1.',
  grade: 'error',
};
