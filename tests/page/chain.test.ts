import { expect, test } from 'vitest';
import { placeColumn } from '../../src/page/chain/column.ts';
import { edgePath, NODE, placeChain, WIDE_NODE } from '../../src/page/chain/layout.ts';
import { wrapText } from '../../src/page/chain/wrap.ts';
import { addressOfSheet, placeOf } from '../../src/page/kit/router.ts';

const node = (id: string) => ({ id, number: id, title: id, value: '' });

test('what feeds stands left of what it feeds, and no two boxes overlap', () => {
  const edges = [
    { from: 'bore', to: 'outside' },
    { from: 'interference', to: 'outside' },
    { from: 'outside', to: 'press' },
    { from: 'bore', to: 'press' },
  ];
  const placed = placeChain({
    nodes: ['bore', 'interference', 'outside', 'press', 'alone'].map(node),
    edges,
  });
  const at = new Map(placed.nodes.map((one) => [one.id, one]));
  for (const { from, to } of edges) expect(at.get(from)!.x + NODE.width).toBeLessThan(at.get(to)!.x);
  for (const a of placed.nodes) {
    expect(a.x).toBeGreaterThanOrEqual(0);
    expect(a.x + NODE.width).toBeLessThanOrEqual(placed.width);
    expect(a.y + NODE.height).toBeLessThanOrEqual(placed.height);
    for (const b of placed.nodes) {
      if (a === b) continue;
      const apart = Math.abs(a.x - b.x) >= NODE.width || Math.abs(a.y - b.y) >= NODE.height;
      expect(apart, `${a.id} and ${b.id}`).toBe(true);
    }
  }
});

test.each(['__proto__', 'constructor', 'toString', 'a\u0001b', '\u0000'])(
  'a line with the id %j has its place like any other',
  (id) => {
    const { nodes, edges } = placeChain({ nodes: ['bore', id].map(node), edges: [{ from: 'bore', to: id }] });
    const [from, to] = nodes;
    expect(from!.x + NODE.width).toBeLessThan(to!.x);
    expect(edges[0]!.points.length).toBeGreaterThan(1);
  },
);

test('an edge is drawn from its first point to its last', () => {
  expect(
    edgePath([
      { x: 0, y: 0 },
      { x: 10, y: 20 },
    ]),
  ).toBe('M0 0C5 0 5 20 10 20');
  expect(edgePath([])).toBe('');
});

test('on a narrow page the lines stand one below the other, beside one trunk for each that feeds', () => {
  const edges = [
    { from: 'bore', to: 'outside' },
    { from: 'interference', to: 'outside' },
    { from: 'outside', to: 'press' },
    { from: 'bore', to: 'press' },
  ];
  const ids = ['bore', 'interference', 'outside', 'press', 'alone'];
  const placed = placeColumn({ nodes: ids.map(node), edges });
  expect(placed.width).toBeLessThan(350);
  expect(new Set(placed.nodes.map(({ x }) => x)).size).toBe(1);
  placed.nodes.slice(1).forEach((one, i) => {
    expect(one.y).toBeGreaterThanOrEqual(placed.nodes[i]!.y + WIDE_NODE.height);
  });
  // Where the way turns is the trunk: shared by what one line feeds, apart for lines that lie beside each other.
  const trunkOf = ({ path }: { path?: string }) => /V/.test(path!) && /Q([\d.]+)/.exec(path!)![1];
  const [first, second, third, fourth] = placed.edges.map(trunkOf);
  expect(first).toBe(fourth);
  expect(new Set([first, second, third]).size).toBeGreaterThan(1);
  expect(placeColumn({ nodes: [], edges: [] }).height).toBeGreaterThan(0);
});

test('a long chain is placed', () => {
  const ids = Array.from({ length: 300 }, (_, i) => `n${i}`);
  const edges = ids.slice(1).map((to, i) => ({ from: ids[i]!, to }));
  expect(placeChain({ nodes: ids.map(node), edges }).nodes).toHaveLength(300);
});

test('thousands of lines are placed in a column, one of them under all others', () => {
  const ids = Array.from({ length: 3000 }, (_, i) => `n${i}`);
  const edges = ids
    .slice(1)
    .flatMap((to, i) => [{ from: ids[i]!, to }, ...(i > 0 ? [{ from: ids[0]!, to }] : [])]);
  const placed = placeColumn({ nodes: ids.map(node), edges });
  expect(placed.nodes).toHaveLength(3000);
  expect(placed.edges).toHaveLength(edges.length);
  expect(placed.nodes.every(({ x }) => x > 0 && x + WIDE_NODE.width <= placed.width)).toBe(true);
});

test('long titles are broken at blanks and end in dots', () => {
  expect(wrapText('Bush outside diameter', 12, 2)).toEqual(['Bush outside', 'diameter']);
  expect(wrapText('First way: cut to, finished before pressing', 14, 2)).toEqual([
    'First way: cut',
    'to, finished…',
  ]);
  expect(wrapText('Unbreakablelongword', 8, 2)).toEqual(['Unbreak…']);
  expect(wrapText('', 8, 2)).toEqual([]);
});

test('the chain and the machine have addresses of their own beside the sheet', () => {
  expect(placeOf(addressOfSheet('4f-a1', 'chain'))).toEqual({ view: 'sheet', id: '4f-a1', part: 'chain' });
  expect(placeOf(addressOfSheet('4f-a1', 'bench'))).toEqual({ view: 'sheet', id: '4f-a1', part: 'bench' });
  expect(placeOf('#/sheet/4f-a1/else').view).toBe('unknown');
});
