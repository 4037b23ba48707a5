import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { RowKey } from '../rows/key.ts';
import type { Register } from './register.ts';
import type { SlipSheet } from './sheet.ts';

/** The narrowest limits among everything that depends on a row, itself included: upper less lower, SI. */
export function bandBelow(
  key: RowKey,
  network: Network,
  register: Register,
  sheet: Pick<SlipSheet, 'figure' | 'nameOf'>,
): { width: number; said: string } | undefined {
  const start = network.rows.get(key);
  if (!start) return undefined;
  let best: { width: number; said: string } | undefined;
  const seen = new Set<Row>([start]);
  const open = [start];
  for (let row = open.pop(); row; row = open.pop()) {
    const standing = row.key;
    const plan = register.sheaves
      .get(row.owner)
      ?.cell.outputs.find((one) => one.planned === standing || one.measured === standing);
    const lower = plan?.limits?.lower && sheet.figure(plan.limits.lower)?.value;
    const upper = plan?.limits?.upper && sheet.figure(plan.limits.upper)?.value;
    if (typeof lower === 'number' && typeof upper === 'number' && lower < upper) {
      const width = upper - lower;
      const said = `the limits of ${sheet.nameOf(row.key)}`;
      if (!best || width < best.width || (width === best.width && said < best.said)) best = { width, said };
    }
    for (const user of row.usedBy) {
      if (seen.has(user)) continue;
      seen.add(user);
      open.push(user);
    }
  }
  return best;
}
