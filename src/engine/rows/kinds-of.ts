import type { CellRecord } from '../../../shared/sheet/format.ts';

/** Kinds of cell that records are of, each once. */
export const kindsOf = (records: readonly Pick<CellRecord, 'kind'>[]): readonly string[] => {
  const alone = records.length === 1 ? records[0] : undefined;
  if (alone) return alone.kind === undefined ? [] : [alone.kind];
  return [...new Set(records.flatMap(({ kind }) => kind ?? []))];
};
