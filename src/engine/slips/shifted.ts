import type { Asked } from './guess.ts';
import { withSetting, withValues } from './rewrite.ts';

/**
 * The text with every reading asked about moved by `shift`, SI. Of readings from a setting the setting moves, all of
 * them together or not at all.
 */
export function shifted({ datum, indices }: Asked, shift: number): string | undefined {
  if (datum.set) {
    const whole = indices.length === datum.literals.length;
    return whole ? withSetting(datum, datum.set, datum.set.size.value + shift) : undefined;
  }
  return withValues(datum, new Map(indices.map((i) => [i, (datum.literals[i]?.value as number) + shift])));
}

/** The text with every reading asked about times `factor`, to whole steps where one is given, SI; none where they are counted from a setting. */
export function scaled({ datum, indices }: Asked, factor: number, step?: number): string | undefined {
  if (datum.set) return undefined;
  const put = (si: number): number => (step === undefined ? si : Math.round(si / step) * step);
  return withValues(
    datum,
    new Map(indices.map((i) => [i, put((datum.literals[i]?.value as number) * factor)])),
  );
}
