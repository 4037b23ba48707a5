import type { CellBuilder } from './builder.ts';
import { call, quoted } from './expr.ts';
import type { SourceEnds } from './row.ts';

/** Ends of a source of which it is known only that it is there: what depends on it has a value and no spread yet. */
export function unknownEnds(build: CellBuilder, why: string): SourceEnds {
  const fail = call('FAIL', quoted(why));
  return {
    low: fail,
    high: fail,
    distribution: 'rectangular',
    k: 2,
    dof: Number.POSITIVE_INFINITY,
    label: `${build.name}: spread not known`,
  };
}
