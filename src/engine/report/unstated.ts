import type { Grid } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';

/** Doubt of a row that is known in part only: how far it reaches, SI, and the cells whose readings it is of. */
export interface Unstated {
  reach: number;
  cells: Set<string>;
}

/** Adds up what sources whose doubt is known in part only do to a row; undefined where there are none. */
export function unstatedOf(network: Network, grid: Grid, row: Row | undefined): Unstated | undefined {
  if (!row?.cases) return undefined;
  const nominal = grid.nominal(row.slot);
  const { values } = row.cases;
  let found: Unstated | undefined;
  for (const [i, source] of network.sourcesInOrder(row).entries()) {
    const read = network.sourceRow(source);
    const body = read?.definition.body;
    if (!read || body?.kind !== 'source' || !body.ends.partial || typeof nominal !== 'number') continue;
    const at = row.ordered.at[i] as number;
    const reach = Math.max(
      Math.abs((values[at] as number) - nominal),
      Math.abs((values[at + 1] as number) - nominal),
    );
    if (reach === 0) continue;
    found ??= { reach: 0, cells: new Set() };
    found.reach += reach;
    found.cells.add(read.owner);
  }
  return found;
}

/** Said of the output whose own reading it is; its line says it by a caution. */
export const OWN_DOUBT =
  'Read with neither gauge nor ±: its doubt is not known, so nothing is proven by it. Name its gauge, or write ± behind it.';

/** Why nothing is proven of a cell by margins with such doubts. */
export function unstatedWords(
  cell: string,
  doubts: readonly Unstated[],
  nameOf: (id: string) => string,
): string | undefined {
  const cells = new Set(doubts.flatMap((one) => [...one.cells]));
  if (cells.size === 0) return undefined;
  cells.delete(cell);
  if (cells.size === 0) return OWN_DOUBT;
  const names = [...cells].map((id) => `\`${nameOf(id)}\``);
  const said = [names.slice(0, -1).join(', '), names.at(-1)].filter(Boolean).join(' and ');
  return names.length === 1
    ? `${said} was read with neither gauge nor ±: its doubt is not known, so nothing is proven by it. Name its gauge there, or write ± behind the reading.`
    : `${said} were read with neither gauge nor ±: their doubt is not known, so nothing is proven by them. Name their gauges there, or write ± behind the readings.`;
}
