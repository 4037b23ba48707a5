import { all, create, type MathJsInstance, type Unit } from 'mathjs';
import type { Chain, Step } from './chain.ts';
import type { Contender, Layout } from './contenders.ts';

const text = ({ kind }: Step): string =>
  kind === 'mean' ? '(a + b) / 2' : kind === 'product' ? 'a * b / (45 mm)' : 'a - b / 2 + 20 mm';

/** A general-purpose expression library with units, its formulas compiled once, over the same cases and corners. */
export function withUnits(of: Chain, { cornerColumns }: Layout): Contender {
  const math = create(all as never) as MathJsInstance;
  const leaves = of.leaves.length;
  const rows = of.steps.map((step) => ({ ...step, code: math.compile(text(step)) }));
  const sizes = of.leaves.map((leaf) => leaf.micrometres / 1000);
  const reach = of.leaves.map((leaf) => leaf.tolerance / 1000);
  const columns = 1 + 2 * leaves + cornerColumns;
  return (leaf, micrometres) => {
    sizes[leaf] = micrometres / 1000;
    for (let c = 0; c < columns; c++) {
      const v: Unit[] = sizes.map((size, i) => {
        const way = c > 2 * leaves ? (c % 2 ? 1 : -1) : c > 0 && (c - 1) >> 1 === i ? (c % 2 ? -1 : 1) : 0;
        return math.unit(size + way * (reach[i] as number), 'mm');
      });
      for (const { code, left, right } of rows) v.push(code.evaluate({ a: v[left], b: v[right] }));
    }
  };
}
