import { Graph, layout } from '@dagrejs/dagre';
import type { ChainEdge, ChainGraph, ChainNode } from './graph.ts';

/** Size of the boxes: slim from left to right, where many stand side by side; wide in a column. */
export const NODE = { width: 160, height: 76 } as const;
export const WIDE_NODE = { width: 208, height: 62 } as const;

export type NodeSize = typeof NODE | typeof WIDE_NODE;

export interface PlacedNode extends ChainNode {
  /** Upper left corner. */
  x: number;
  y: number;
}

export interface PlacedEdge extends ChainEdge {
  points: ReadonlyArray<{ x: number; y: number }>;
  /** The drawn way, where it is not the smooth one through the points. */
  path?: string;
}

export interface PlacedChain {
  width: number;
  height: number;
  node: NodeSize;
  nodes: PlacedNode[];
  edges: PlacedEdge[];
}

const MARGIN = 12;

/** Places the lines in ranks from what is given to what follows, with as few crossings as the library finds. */
export const placeChain = ({ nodes, edges }: ChainGraph): PlacedChain => {
  const graph = new Graph();
  graph.setGraph({ rankdir: 'LR', nodesep: 14, ranksep: 30, edgesep: 8, marginx: MARGIN, marginy: MARGIN });
  graph.setDefaultEdgeLabel(() => ({}));
  // The library keeps nodes as fields of plain objects: a line's own id could be one that every object has.
  const keys = new Map(nodes.map(({ id }, k) => [id, `n${k}`]));
  const key = (id: string): string => keys.get(id) as string;
  const nodeAt = (id: string) => graph.node(key(id)) as { x: number; y: number };
  for (const { id } of nodes) graph.setNode(key(id), { ...NODE });
  for (const { from, to } of edges) graph.setEdge(key(from), key(to));
  layout(graph);
  const size = graph.graph() as { width?: number; height?: number };
  return {
    width: Math.max(size.width ?? 0, NODE.width + 2 * MARGIN),
    height: Math.max(size.height ?? 0, NODE.height + 2 * MARGIN),
    node: NODE,
    nodes: nodes.map((node) => {
      const at = nodeAt(node.id);
      return { ...node, x: at.x - NODE.width / 2, y: at.y - NODE.height / 2 };
    }),
    edges: edges.map((edge) => {
      const { points } = graph.edge(key(edge.from), key(edge.to)) as { points: PlacedEdge['points'] };
      const from = nodeAt(edge.from);
      const to = nodeAt(edge.to);
      // Out of the right side and into the left one, wherever the straight way would cut the box.
      return {
        ...edge,
        points: [
          { x: from.x + NODE.width / 2, y: from.y },
          ...points.slice(1, -1),
          { x: to.x - NODE.width / 2, y: to.y },
        ],
      };
    }),
  };
};

/** A smooth line through the points of an edge, ending level, so that its arrow points along the rank. */
export const edgePath = (points: PlacedEdge['points']): string => {
  const [first, ...rest] = points;
  const last = rest.at(-1);
  if (!first || !last) return '';
  let path = `M${round(first.x)} ${round(first.y)}`;
  let from = first;
  for (const to of rest) {
    const middle = (from.x + to.x) / 2;
    path += `C${round(middle)} ${round(from.y)} ${round(middle)} ${round(to.y)} ${round(to.x)} ${round(to.y)}`;
    from = to;
  }
  return path;
};

const round = (x: number): number => Math.round(x * 10) / 10;
