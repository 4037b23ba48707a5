import { quantityKind } from '../../../shared/quantities/quantities.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';

/** What to type into a blank line, by how its value comes about and what it is a value of. */
export const promptOf = ({ role, quantity }: Pick<CellRecord, 'role' | 'quantity'>): string => {
  const what = quantity === undefined ? undefined : quantityKind(quantity)?.label;
  const size = what === 'length' ? 'size' : what;
  switch (role) {
    case 'given':
      return `type the ${size ?? 'figure'} given`;
    case 'measured':
      return what === 'length' ? 'type the readings' : `type the ${what ?? 'figure'} read`;
    case 'chosen':
      return `choose the ${size ?? 'figure'}, or type a formula`;
    default:
      return 'type a formula, beginning with =';
  }
};

/** How a list of readings is written, for an example that is one. */
export const listWords = (example: string): string | undefined => {
  const parts = [
    example.includes(';') && '; between readings at one place',
    example.includes('|') && '| between places along it',
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(', ') : undefined;
};
