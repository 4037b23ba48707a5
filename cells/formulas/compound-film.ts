import type { CautionFor } from '../record/caution.ts';
import type { CellInput, CellOutput, Validity } from '../record/cell.ts';

/**
 * Retaining compound that is on the part while it is pressed. Where metal is bare and the film thin it begins to cure as it
 * travels, and then shears over the whole area whatever the pressure is: that share comes on top of the friction.
 */
export const filmInputs: readonly CellInput[] = [
  {
    name: 'wet_compound',
    label: 'retaining compound on the part while it is pressed',
    choice: 'retaining-compounds',
    optional: true,
    hint: 'Blank: none. With it the force can be many times that of friction alone.',
  },
  {
    name: 'film_share',
    label: 'share of its strength the film reaches on the way',
    quantity: 'number',
    default: '0.3 ± 0.3',
    sensible: ['0', '1'],
    source:
      'common practice, no source: none where the stroke takes seconds; more than half where the part stops or creeps, is warm, or an activator was used',
  },
];

/** Where the pair of metals is the wet one and no compound is named, as strong a one as is usual. */
export const wetByPair =
  'IF(ISBLANK(friction_pair); 0 Pa; IF(compound_wets > 0.5; 20 MPa * film_share; 0 Pa))';

/** `wet` is a formula of what the film is worth where no compound is named: 0 Pa, or more where the friction says it is wet. */
export const filmOutputs = (wet: string): readonly CellOutput[] => [
  ...(wet === wetByPair
    ? [
        {
          name: 'compound_wets',
          label: 'friction is that of wet compound',
          quantity: 'number',
          table: { choice: 'friction_pair', column: 'wet' },
          basis: 'model' as const,
          hint: '1 where it is.',
        },
      ]
    : []),
  {
    name: 'film_strength',
    label: 'shear strength of the compound, cured',
    quantity: 'pressure',
    table: { choice: 'wet_compound', column: 'shear' },
    basis: 'model',
  },
  {
    name: 'film_shear',
    label: 'shear of the film while it is pressed',
    quantity: 'pressure',
    formula: `=IF(ISBLANK(wet_compound); ${wet}; film_strength * film_share)`,
    basis: 'model',
    hint: 'Over the whole area in contact, on top of the friction.',
  },
];

export const filmHolds: readonly Validity[] = [
  {
    holds: '=AND(film_share >= 0; film_share <= 1)',
    otherwise: 'The share of the strength the film reaches lies from 0 to 1.',
    grade: 'error',
  },
];

export const filmCaution: CautionFor = {
  text: 'Retaining compound begins to set on the way in: have all at hand, press in one stroke without a stop, and plan the press on the high end. A part that stops half way may not move again.',
  given: ['wet_compound'],
  chosen: /compound/i,
};
