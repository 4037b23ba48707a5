import type { CheckVerdict } from '../../../shared/checks/check.ts';
import { isProven } from '../../../shared/checks/states.ts';
import { wordsOf } from '../../../shared/checks/words.ts';
import type { Grid } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { RowKey } from '../rows/key.ts';

/** Cells read at one place, or in one direction, that a row depends on. */
function readInPart(network: Network, grid: Grid, row: Row, into: Map<string, 'place' | 'direction'>): void {
  const nominal = grid.nominal(row.slot);
  const values = row.cases?.values;
  if (!values) return;
  for (const [i, source] of network.sourcesInOrder(row).entries()) {
    const read = network.sourceRow(source);
    const body = read?.definition.body;
    if (!read || body?.kind !== 'source' || !body.ends.where) continue;
    const at = row.ordered.at[i] as number;
    if (values[at] !== nominal || values[at + 1] !== nominal) into.set(read.owner, body.ends.where);
  }
}

/**
 * Its least beside its greatest, or its mean, of a cell read at one place: what of its own doubt drops out of their
 * difference hides that it was not read elsewhere.
 */
function readOnceOver(network: Network, row: Row, into: Map<string, 'place' | 'direction'>): void {
  const taken = new Map<string, Row>();
  const all = new Set<Row>([row]);
  for (const one of all) {
    if (one.definition.proof?.is !== 'measured') {
      for (const used of one.uses) all.add(used);
      continue;
    }
    const { owner } = one;
    const other = taken.get(owner);
    taken.set(owner, one);
    if (!other || other === one) continue;
    for (const source of one.members) {
      const body = network.sourceRow(source)?.definition.body;
      if (body?.kind === 'source' && body.ends.where) into.set(owner, body.ends.where);
    }
  }
}

/**
 * A verdict of what was read at one place, or in one direction, is of that place: a part may be worn elsewhere.
 *
 * @param margins rows that the verdict was found by
 */
export function whereRead(
  verdict: CheckVerdict,
  margins: readonly (RowKey | undefined)[],
  network: Network,
  grid: Grid,
  cell: string,
  nameOf: (id: string) => string,
): CheckVerdict {
  if (!isProven(verdict.asNew.state) && !isProven(verdict.inService?.state)) return verdict;
  const found = new Map<string, 'place' | 'direction'>();
  for (const key of margins) {
    const row = key === undefined ? undefined : network.rows.get(key);
    if (!row) continue;
    readInPart(network, grid, row, found);
    readOnceOver(network, row, found);
  }
  if (found.size === 0) return verdict;
  const told = [...found].map(([id, where]) => {
    const who = id === cell ? 'It' : `\`${nameOf(id)}\``;
    return `${who} was read ${where === 'place' ? 'at one place' : 'in one direction'}`;
  });
  const said = [told.slice(0, -1).join(', '), told.at(-1)].filter(Boolean).join(' and ');
  const where = `${said}: proven where read, not for the rest of the part. Readings in two directions at two places, \`;\` between directions and \`|\` between places, tell of all of it.`;
  return { ...verdict, words: wordsOf({ ...verdict, where }), where };
}
