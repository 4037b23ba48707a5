/** Where a figure, its spread and its limits stand on a bar of fixed length. Pure numbers; the bar draws them. */

export interface ScaleInput {
  lower?: number;
  upper?: number;
  wear?: number;
  value?: number;
  low?: number;
  high?: number;
  /** Figure before the last edit. */
  before?: number;
}

/** Position along the bar, 0 to 1; `off` where the true place lies beyond an end. */
export interface Mark {
  at: number;
  off?: 'low' | 'high';
}

export type LimitScale = { [K in keyof ScaleInput]?: Mark };

/** Share of the bar kept free outside the outermost limit on each side. */
const MARGIN = 0.3;

const finite = (x: number | undefined): x is number => x !== undefined && Number.isFinite(x);

const domainOf = (input: ScaleInput): [number, number] | undefined => {
  const limits = [input.lower, input.upper, input.wear].filter(finite);
  if (limits.length === 0) return undefined;
  const least = Math.min(...limits);
  const most = Math.max(...limits);
  if (most > least) {
    const pad = ((most - least) * MARGIN) / (1 - 2 * MARGIN);
    return [least - pad, most + pad];
  }
  // One limit alone gives no length: the distance to the figure does.
  const others = [input.value, input.low, input.high].filter(finite);
  const reach = Math.max(...others.map((x) => Math.abs(x - least)), 0) || Math.abs(least) || 1;
  return [least - reach * 1.25, least + reach * 1.25];
};

/** @returns nothing where there are no finite limits: then there is no bar to draw. */
export const limitScale = (input: ScaleInput): LimitScale | undefined => {
  const domain = domainOf(input);
  if (!domain) return undefined;
  const [from, to] = domain;
  const place = (x: number): Mark => {
    const at = (x - from) / (to - from);
    if (at < 0) return { at: 0, off: 'low' };
    if (at > 1) return { at: 1, off: 'high' };
    return { at };
  };
  const scale: LimitScale = {};
  for (const key of ['lower', 'upper', 'wear', 'value', 'low', 'high', 'before'] as const) {
    const x = input[key];
    if (finite(x)) scale[key] = place(x);
  }
  return scale;
};
