import type { SolvedIn } from './row.ts';
import type { SheetScope } from './scope.ts';

/** How the size of a ring is looked for, and told in the unit the line is shown in. */
export function solvedIn(
  scope: SheetScope,
  quantity: string | undefined,
  display: string | undefined,
): SolvedIn {
  const unit = scope.texts.unitOf(quantity, display);
  return {
    unit: unit.symbol,
    ...(unit.point ? { isPoint: true } : {}),
    ...(quantity === 'length' ? { isLength: true } : {}),
  };
}
