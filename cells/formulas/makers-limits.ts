import type { CellInput, Validity } from '../record/cell.ts';

/** Limits that the maker gives `what`, new and worn out: `new_least`, `new_greatest`, `wear_limit`. */
export const makersLimits = (what: string): readonly CellInput[] =>
  [
    { name: 'new_least', label: `maker's least ${what}, new` },
    { name: 'new_greatest', label: `maker's greatest ${what}, new` },
    { name: 'wear_limit', label: "maker's wear limit" },
  ].map((limit) => ({ ...limit, quantity: 'length', sensible: ['0 mm', '5 mm'], optional: true }));

export const makersLimitsHold = (what: string): readonly Validity[] => [
  {
    holds: '=IF(OR(ISBLANK(new_least); ISBLANK(new_greatest)); 1 > 0; new_least < new_greatest)',
    otherwise: `The maker's least ${what} is not below the greatest.`,
    grade: 'error',
  },
  {
    holds: '=IF(OR(ISBLANK(new_greatest); ISBLANK(wear_limit)); 1 > 0; new_greatest <= wear_limit)',
    otherwise: `The wear limit is below the greatest ${what} of a new part.`,
    grade: 'error',
  },
];
