import type { Range } from './range.ts';

/** The middle of a cell of a map, on one of its sides, SI. Apart from the map, so that drawing one brings nothing else. */
export const mapValue = ({ range }: { range: Range }, at: number, size: number): number =>
  range.low + ((at + 0.5) / size) * (range.high - range.low);
