import type { ChainGraph } from './graph.ts';
import { WIDE_NODE as NODE, type PlacedChain } from './layout.ts';

const MARGIN = 4;
const GAP = 14;
const BEND = 6;
/** Room left of the boxes for the lines that join them, and how far apart those stand at most. */
const ROOM = 112;
const APART = 12;

/** Of any number of them: as arguments of one call so many may be too many. */
const least = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);

interface Trunk {
  from: string;
  top: number;
  bottom: number;
}

/**
 * Places the lines of a sheet one below the other, in its own order, for a narrow page: what a line feeds depends on one
 * trunk beside them. Trunks that lie beside each other stand apart, the short ones nearest to the boxes.
 */
export const placeColumn = ({ nodes, edges }: ChainGraph): PlacedChain => {
  const step = NODE.height + GAP;
  const rowOf = new Map(nodes.map(({ id }, row) => [id, row]));
  const top = (id: string) => MARGIN + rowOf.get(id)! * step;
  const outOf = (id: string) => top(id) + NODE.height - 14;
  const into = (id: string) => top(id) + 22;
  const ends = new Map<string, number[]>();
  for (const { from, to } of edges) ends.set(from, [...(ends.get(from) ?? []), into(to)]);
  const trunks = [...new Set(edges.map(({ from }) => from))]
    .map((from): Trunk => {
      const all = [outOf(from), ...(ends.get(from) ?? [])];
      return { from, top: least(all), bottom: -least(all.map((y) => -y)) };
    })
    .sort((a, b) => a.bottom - a.top - (b.bottom - b.top));
  const lanes: Trunk[][] = [];
  const laneOf = new Map<string, number>();
  for (const trunk of trunks) {
    const free = lanes.findIndex((lane) =>
      lane.every((other) => other.bottom + GAP < trunk.top || trunk.bottom + GAP < other.top),
    );
    const lane = free < 0 ? lanes.length : free;
    lanes[lane] = [...(lanes[lane] ?? []), trunk];
    laneOf.set(trunk.from, lane);
  }
  const apart = lanes.length > 0 ? Math.min(APART, ROOM / lanes.length) : 0;
  const left = MARGIN + lanes.length * apart + (lanes.length > 0 ? BEND + 12 : 0);
  return {
    width: left + NODE.width + MARGIN,
    height: 2 * MARGIN + Math.max(1, nodes.length) * step - GAP,
    node: NODE,
    nodes: nodes.map((node) => ({ ...node, x: left, y: top(node.id) })),
    edges: edges.map((edge) => {
      const x = left - BEND - 12 - laneOf.get(edge.from)! * apart;
      const [start, end] = [outOf(edge.from), into(edge.to)];
      const way = end > start ? BEND : -BEND;
      return {
        ...edge,
        points: [
          { x: left, y: start },
          { x: left, y: end },
        ],
        path: `M${left} ${start}H${x + BEND}Q${x} ${start} ${x} ${start + way}V${end - way}Q${x} ${end} ${x + BEND} ${end}H${left}`,
      };
    }),
  };
};
