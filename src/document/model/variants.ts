import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Reading } from './reading.ts';
import { toNames, toStored } from './references.ts';

export type Variants = NonNullable<SheetFile['variants']>;

/** A variant's entries stand by cell, or by `cell.input`; the cell is stored by id like every reference. */
export function mapVariants(
  variants: Variants,
  key: (head: string) => string,
  text: (entry: string) => string,
): Variants {
  return variants.map((variant) => ({
    ...variant,
    entries: Object.fromEntries(
      Object.entries(variant.entries).map(([at, entry]) => {
        const [head, ...rest] = at.split('.');
        return [[key(head!), ...rest].join('.'), text(entry)];
      }),
    ),
  }));
}

export const storeVariants = (variants: Variants, reading: Reading): Variants =>
  mapVariants(
    variants,
    (head) => toStored(head, 'name', (name) => reading.idOf(name)),
    (entry) => reading.store(entry, 'formula', ''),
  );

export const showVariants = (variants: Variants, reading: Reading): Variants =>
  mapVariants(
    variants,
    (head) => toNames(head, (id) => reading.nameOf(id)),
    (entry) => reading.show(entry),
  );
