import type { SyntaxNode } from '@lezer/common';
import type { Literal } from '../syntax/syntax.ts';
import { type Amount, readAmount } from '../values/amount.ts';
import { children, complain, type Reading, sliceOf, wanted } from '../values/reading.ts';
import { settleLiterals } from '../values/settle.ts';
import { readSpread, resolveSpread, unitOfSpread } from '../values/spread.ts';
import { asksCommas } from './commas.ts';
import type { ReadForm } from './form.ts';
import { asksMixedUnits } from './mixed-units.ts';

/** Groups of one list by the station marks between them; a comma or a line break is stored as `;` or `|`. */
export const byStation = <T>(r: Reading, nodes: SyntaxNode[], read: (node: SyntaxNode) => T): T[][] => {
  const stations: T[][] = [[]];
  for (const node of nodes) {
    const mark = sliceOf(r, node);
    if (node.name === 'StationMark') {
      if (mark === '\n') r.edits.push({ from: node.from, to: node.to, insert: ' | ' });
      stations.push([]);
    } else if (node.name === 'ReadingMark') {
      if (mark === ',') r.edits.push({ from: node.from, to: node.to, insert: ';' });
    } else stations.at(-1)?.push(read(node));
  }
  return stations;
};

export const onlyMeasured = (r: Reading, node: SyntaxNode): boolean => {
  const { role } = r.context;
  if (role === undefined || role === 'measured') return true;
  complain(
    r,
    'range',
    'A list of readings belongs in a measured cell: give the cell the role measured, or enter one value.',
    node,
  );
  return false;
};

/** 1.7483; 1.7481 | 1.7480; 1.7479 in: readings of one station parted by `;`, stations by `|` or a line break. */
export const readReadings = (
  r: Reading,
  node: SyntaxNode,
  within: SyntaxNode | undefined,
): ReadForm | undefined => {
  if (asksCommas(r, node) || !onlyMeasured(r, node)) return undefined;
  const want = wanted(r);
  const stations = byStation(r, children(node), (value) => readAmount(r, children(value), want));
  const typed = within && readSpread(r, within, want);
  const amounts = stations.flat();
  const whole = amounts.filter((amount): amount is Amount => amount !== undefined);
  if (whole.length < amounts.length || (within && !typed)) return undefined;
  if (asksMixedUnits(r, node, whole)) return undefined;
  const settled = settleLiterals(r, whole, unitOfSpread(typed));
  if (!settled) return undefined;
  const spread = typed && resolveSpread(r, typed, settled.units[0]!);
  if (typed && !spread) return undefined;
  let next = 0;
  const grouped: Literal[][] = stations.map((station) => station.map(() => settled.literals[next++]!));
  return { entry: { kind: 'readings', stations: grouped, ...(spread ? { spread } : {}) } };
};
