import type { RowBound } from '../network/layout.ts';

export const newBound = (): RowBound => ({
  enclosure: undefined,
  template: undefined,
  uses: [],
  places: [],
  placed: [],
  members: [],
  lo: Number.NaN,
  hi: Number.NaN,
  middleLo: Number.NaN,
  middleHi: Number.NaN,
  flags: 0,
  slopes: new Float64Array(0),
  worst: undefined,
});
