import { expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { rowById, titleOf } from '../outside/tables/reference.ts';

const texts = (values: Record<string, number>): string[] =>
  (library.kinds.get('bolt-circle')?.drawing?.(values)?.shapes ?? []).flatMap((shape) =>
    shape.kind === 'text' ? [shape.text] : [],
  );

test(`the drawing lists every hole: ${titleOf(rowById('R696'))}`, () => {
  const printed = rowById('R696').expected as [number, number][];
  const drawn = texts({ circle: 0.1, holes: 5, hole: 2, hole_angle: Math.PI / 2 + (2 * Math.PI) / 5 });
  const rows = printed.map((_, i) => drawn.slice(5 + 5 * i, 10 + 5 * i).map(Number));
  for (const [i, [x, y]] of printed.entries()) {
    expect(rows[i]?.[0]).toBe(i + 1);
    expect(rows[i]?.[1]).toBeCloseTo(x, 3);
    expect(rows[i]?.[2]).toBeCloseTo(y, 3);
    expect(rows[i]?.[3]).toBeCloseTo(x / 25.4, 4);
    expect(rows[i]?.[4]).toBeCloseTo(y / 25.4, 4);
  }
});
