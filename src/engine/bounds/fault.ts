import { Quotient } from '../../language/bounds/arithmetic.ts';
import { type Bound, FAULTS, LOST, MUTE, type Port, TURN } from '../../language/bounds/bound.ts';
import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { Bounds } from './bounds.ts';

/** Why a value has no bound: where that begins, and by which source. */
export interface Fault {
  row: Row;
  source: Row | undefined;
  why: 'divisor' | 'pole' | 'no value' | 'says nothing';
}

/** Where on the way up a row loses its bounds; undefined where it has them. */
export function faultOf(row: Row, bounds: Bounds, network: Network): Fault | undefined {
  if (!row.bound || (row.bound.flags & FAULTS) === 0) return undefined;
  let at = row;
  for (;;) {
    const above = at.uses.find((used) => used.bound && (used.bound.flags & FAULTS) !== 0);
    if (!above) break;
    at = above;
  }
  const { bound } = at;
  if (!bound?.enclosure)
    return { row: at, source: at.source === undefined ? undefined : at, why: 'no value' };
  bounds.over(at, bound);
  let node: Bound = bound.enclosure.root;
  for (;;) {
    const part = node.parts.find((one) => (one.flags & FAULTS) !== 0);
    if (!part) break;
    node = part;
  }
  const why =
    node.flags & MUTE
      ? 'says nothing'
      : node.flags & LOST
        ? 'no value'
        : node instanceof Quotient
          ? 'divisor'
          : 'pole';
  return { row: at, source: sourceOf(at, node.blamed, network), why };
}

/** The source that moves the given parts of a formula most. */
function sourceOf(row: Row, parts: readonly Bound[], network: Network): Row | undefined {
  const { enclosure, uses, places } = row.bound as NonNullable<Row['bound']>;
  const ports = enclosure?.ports ?? [];
  for (const port of ports) port.dlo = port.dhi = 0;
  for (const part of parts) part.back(1, 1);
  const weights = new Float64Array(row.members.length);
  uses.forEach((used, i) => {
    const { dlo, dhi } = ports[i] as Port;
    const steep = Math.max(-dlo, dhi);
    if (steep === 0 || !used.bound) return;
    for (const [j, m] of (places[i] ?? []).entries()) {
      const { slopes } = used.bound;
      const inner = Math.max(-(slopes[2 * j] as number), slopes[2 * j + 1] as number);
      if (inner > 0) weights[m] = (weights[m] as number) + Math.min(steep, 1e200) * Math.min(inner, 1e50);
    }
  });
  let found: Row | undefined;
  let most = 0;
  for (const source of network.sourcesInOrder(row)) {
    const one = network.sourceRow(source);
    const wide = one?.bound ? one.bound.hi - one.bound.lo : 0;
    const weight = (weights[row.members.indexOf(source)] as number) * Math.min(wide, 1e50);
    if (weight > most) {
      most = weight;
      found = one;
    }
  }
  return found;
}

/** True where more than one branch or step of a formula of the row comes about within the spread. */
export const hasTurn = (row: Row): boolean => {
  const turns = (one: Row): boolean => ((one.bound?.flags ?? 0) & TURN) !== 0;
  return turns(row) || row.uses.some((used) => used.owner === row.owner && turns(used));
};
