import { HyperFormula } from 'hyperformula';
import type { Chain } from './chain.ts';
import type { Contender } from './contenders.ts';

/** HyperFormula at nominal alone: no spread, no worst case, no checks. */
export function nominal(of: Chain): Contender {
  const rows: (string | number)[][] = of.leaves.map((leaf) => [leaf.micrometres * 1e-6]);
  for (const { kind, left, right } of of.steps) {
    const [a, b] = [`$A$${left + 1}`, `$A$${right + 1}`];
    rows.push([
      kind === 'mean' ? `=(${a}+${b})/2` : kind === 'product' ? `=${a}*${b}/0.045` : `=${a}-${b}/2+0.02`,
    ]);
  }
  const engine = HyperFormula.buildFromArray(rows, {
    licenseKey: 'gpl-v3',
    smartRounding: false,
    undoLimit: 0,
  });
  return (leaf, micrometres) => {
    engine.setCellContents({ sheet: 0, row: leaf, col: 0 }, micrometres * 1e-6);
  };
}
