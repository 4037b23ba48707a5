import type { CellInput, CellOutput, Validity } from '../record/cell.ts';

/** Roughness of two parts that are pressed together, `inner` being what the inner one is called. */
export const roughnessInputs = (inner: string): readonly CellInput[] => [
  {
    name: 'inner_roughness',
    label: `roughness Rz of the ${inner}`,
    quantity: 'length',
    optional: true,
    sensible: ['0.5 um', '60 um'],
    hint: 'Or its Ra below. Both blank: no interference is taken as lost to roughness.',
  },
  {
    name: 'outer_roughness',
    label: 'roughness Rz of the bore',
    quantity: 'length',
    optional: true,
    sensible: ['0.5 um', '60 um'],
    hint: 'Or its Ra below.',
  },
  {
    name: 'inner_ra',
    label: `roughness Ra of the ${inner}`,
    quantity: 'length',
    optional: true,
    sensible: ['0.1 um', '12.5 um'],
    hint: 'As the shop reads it: 63 µin, 1.6 µm. Counts only where its Rz is blank.',
  },
  {
    name: 'outer_ra',
    label: 'roughness Ra of the bore',
    quantity: 'length',
    optional: true,
    sensible: ['0.1 um', '12.5 um'],
  },
  {
    name: 'rz_per_ra',
    label: 'Rz over Ra',
    quantity: 'number',
    default: '6 ± 2',
    sensible: ['4', '12'],
    source:
      'turned and ground surfaces lie about between 4 and 8: supplement 1 to DIN 4768 (from memory); lapped and shot ones higher',
  },
];

/** Roughness of both parts as Rz: read so, or turned from Ra with the doubt of that. */
const rzTaken = (part: 'inner' | 'outer', label: string): CellOutput => ({
  name: `${part}_rz`,
  label,
  quantity: 'length',
  formula: `=IF(ISBLANK(${part}_roughness); rz_per_ra * ${part}_ra; ${part}_roughness)`,
  basis: 'model',
  display: { in: 'uin', mm: 'um' },
});

/** `share` of both roughnesses is lost: DIN 7190-1:2017 takes 0.4, DIN 7190:2001 took 0.8. */
export const interferenceLost = (share: string): readonly CellOutput[] => [
  rzTaken('inner', 'roughness Rz of the inner part, taken'),
  rzTaken('outer', 'roughness Rz of the bore, taken'),
  {
    name: 'interference_lost',
    label: 'interference lost to roughness',
    quantity: 'length',
    formula: `=IF(OR(AND(ISBLANK(inner_roughness); ISBLANK(inner_ra)); AND(ISBLANK(outer_roughness); ISBLANK(outer_ra))); 0 m; ${share} * (inner_rz + outer_rz))`,
    basis: 'model',
    display: { in: 'tenth_in', mm: 'um' },
  },
];

export const roughnessHolds: readonly Validity[] = [
  {
    holds:
      '=AND(IF(ISBLANK(inner_roughness); 1 > 0; inner_roughness >= 0 m); IF(ISBLANK(outer_roughness); 1 > 0; outer_roughness >= 0 m); IF(ISBLANK(inner_ra); 1 > 0; inner_ra >= 0 m); IF(ISBLANK(outer_ra); 1 > 0; outer_ra >= 0 m); rz_per_ra > 1)',
    otherwise: 'A roughness is not below zero, and Rz is more than Ra.',
    grade: 'error',
  },
  {
    holds:
      '=AND(ISBLANK(inner_roughness); ISBLANK(inner_ra)) = AND(ISBLANK(outer_roughness); ISBLANK(outer_ra))',
    otherwise: 'Only one roughness is entered, so none of the interference is taken as lost: enter both.',
    grade: 'caution',
  },
];
