import type { Chain } from './chain.ts';

/** Takes one edit and has every result ready when it returns. */
export type Contender = (leaf: number, micrometres: number) => void;

/** Pairs of ends at which the worst case of every row is read: with this many columns the engine makes do. */
export interface Layout {
  cornerColumns: number;
}

type Row = (v: Float64Array) => number;

const rowsOf = (of: Chain): Row[] =>
  of.steps.map(({ kind, left: a, right: b }): Row => {
    if (kind === 'mean') return (v) => ((v[a] as number) + (v[b] as number)) / 2;
    if (kind === 'product') return (v) => ((v[a] as number) * (v[b] as number)) / 0.045;
    return (v) => (v[a] as number) - (v[b] as number) / 2 + 0.02;
  });

/** Figures as plain numbers: value, worst case and standard uncertainty of every quantity. */
export interface Figures {
  value: Float64Array;
  low: Float64Array;
  high: Float64Array;
  u: Float64Array;
}

/**
 * The limit: closures as a programmer would write them by hand for this one sheet, in every case (nominal, each source
 * at either end) and in as many corner columns as the engine has, over the whole sheet; then the figures.
 */
export function closures(of: Chain, { cornerColumns }: Layout): { edit: Contender; figures: Figures } {
  const rows = rowsOf(of);
  const leaves = of.leaves.length;
  const sizes = of.leaves.map((leaf) => leaf.micrometres * 1e-6);
  const reach = of.leaves.map((leaf) => leaf.tolerance * 1e-6);
  const columns = 1 + 2 * leaves + cornerColumns;
  const cases = Array.from({ length: columns }, () => new Float64Array(of.quantities));
  const figures: Figures = {
    value: cases[0] as Float64Array,
    low: new Float64Array(of.quantities),
    high: new Float64Array(of.quantities),
    u: new Float64Array(of.quantities),
  };
  const column = (v: Float64Array): void => {
    for (let i = 0; i < rows.length; i++) v[leaves + i] = (rows[i] as Row)(v);
  };
  const edit: Contender = (leaf, micrometres) => {
    sizes[leaf] = micrometres * 1e-6;
    for (let c = 0; c < columns; c++) {
      const v = cases[c] as Float64Array;
      for (let i = 0; i < leaves; i++) v[i] = sizes[i] as number;
      if (c > 2 * leaves) {
        const way = c % 2 ? 1 : -1;
        for (let i = 0; i < leaves; i++) v[i] = (v[i] as number) + way * (reach[i] as number);
      } else if (c > 0) {
        const i = (c - 1) >> 1;
        v[i] = (v[i] as number) + (c % 2 ? -1 : 1) * (reach[i] as number);
      }
      column(v);
    }
    for (let i = 0; i < of.quantities; i++) {
      const value = figures.value[i] as number;
      let variance = 0;
      for (const source of of.upstream[i] as number[]) {
        const half = ((cases[2 + 2 * source]?.[i] as number) - (cases[1 + 2 * source]?.[i] as number)) / 2;
        variance += (half * half) / 3;
      }
      let [low, high] = [value, value];
      for (let c = 1 + 2 * leaves; c < columns; c++) {
        low = Math.min(low, cases[c]?.[i] as number);
        high = Math.max(high, cases[c]?.[i] as number);
      }
      figures.low[i] = low;
      figures.high[i] = high;
      figures.u[i] = Math.sqrt(variance);
    }
  };
  return { edit, figures };
}

/** The same, but only what depends on the edited leaf, and of that only the sources upstream: the least there is to do. */
export function sparseClosures(of: Chain): { edit: Contender; figures: Figures } {
  const rows = rowsOf(of);
  const leaves = of.leaves.length;
  const columns = 1 + 2 * leaves;
  const sizes = of.leaves.map((leaf) => leaf.micrometres * 1e-6);
  const reach = of.leaves.map((leaf) => leaf.tolerance * 1e-6);
  const below = of.leaves.map((_, leaf) =>
    of.steps.flatMap((_step, i) => (of.upstream[leaves + i]?.includes(leaf) ? [leaves + i] : [])),
  );
  // Each case has an array of its own that holds nominal values wherever its source is not upstream.
  const cases = Array.from({ length: columns + 2 }, () => new Float64Array(of.quantities));
  const figures: Figures = {
    value: cases[0] as Float64Array,
    low: new Float64Array(of.quantities),
    high: new Float64Array(of.quantities),
    u: new Float64Array(of.quantities),
  };
  const compute = (i: number): void => {
    const row = rows[i - leaves] as Row;
    const value = row(cases[0] as Float64Array);
    for (const v of cases) v[i] = value;
    let variance = 0;
    for (const source of of.upstream[i] as number[]) {
      const [a, b] = [cases[1 + 2 * source] as Float64Array, cases[2 + 2 * source] as Float64Array];
      a[i] = row(a);
      b[i] = row(b);
      const half = ((b[i] as number) - (a[i] as number)) / 2;
      variance += (half * half) / 3;
    }
    const [low, high] = [cases[columns] as Float64Array, cases[columns + 1] as Float64Array];
    low[i] = row(low);
    high[i] = row(high);
    figures.low[i] = Math.min(low[i] as number, high[i] as number);
    figures.high[i] = Math.max(low[i] as number, high[i] as number);
    figures.u[i] = Math.sqrt(variance);
  };
  const setLeaf = (leaf: number): void => {
    const [size, half] = [sizes[leaf] as number, reach[leaf] as number];
    for (const v of cases) v[leaf] = size;
    (cases[1 + 2 * leaf] as Float64Array)[leaf] = size - half;
    (cases[2 + 2 * leaf] as Float64Array)[leaf] = size + half;
    (cases[columns] as Float64Array)[leaf] = size - half;
    (cases[columns + 1] as Float64Array)[leaf] = size + half;
  };
  for (let leaf = 0; leaf < leaves; leaf++) setLeaf(leaf);
  for (let i = leaves; i < of.quantities; i++) compute(i);
  return {
    figures,
    edit: (leaf, micrometres) => {
      sizes[leaf] = micrometres * 1e-6;
      setLeaf(leaf);
      for (const i of below[leaf] as number[]) compute(i);
    },
  };
}
