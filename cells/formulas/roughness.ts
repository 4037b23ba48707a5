import type { CellInput, CellOutput, Validity } from '../record/cell.ts';

/** Roughness of two parts that are pressed together, `inner` being what the inner one is called. */
export const roughnessInputs = (inner: string): readonly CellInput[] => [
  {
    name: 'inner_roughness',
    label: `roughness Rz of the ${inner}`,
    quantity: 'length',
    optional: true,
    sensible: ['0.5 um', '60 um'],
    hint: 'Blank: no interference is taken as lost to roughness.',
  },
  {
    name: 'outer_roughness',
    label: 'roughness Rz of the bore',
    quantity: 'length',
    optional: true,
    sensible: ['0.5 um', '60 um'],
  },
];

/** `share` of both roughnesses is lost: DIN 7190-1:2017 takes 0.4, DIN 7190:2001 took 0.8. */
export const interferenceLost = (share: string): CellOutput => ({
  name: 'interference_lost',
  label: 'interference lost to roughness',
  quantity: 'length',
  formula: `=IF(OR(ISBLANK(inner_roughness); ISBLANK(outer_roughness)); 0 m; ${share} * (inner_roughness + outer_roughness))`,
  display: { in: 'tenth_in', mm: 'um' },
});

export const roughnessHolds: readonly Validity[] = [
  {
    holds:
      '=AND(IF(ISBLANK(inner_roughness); 1 > 0; inner_roughness >= 0 m); IF(ISBLANK(outer_roughness); 1 > 0; outer_roughness >= 0 m))',
    otherwise: 'A roughness is not below zero.',
    grade: 'error',
  },
  {
    holds: '=ISBLANK(inner_roughness) = ISBLANK(outer_roughness)',
    otherwise: 'Only one roughness is entered, so none of the interference is taken as lost: enter both.',
    grade: 'caution',
  },
];
