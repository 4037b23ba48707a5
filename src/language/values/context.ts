import type { Role, SheetUnits } from '../../../shared/sheet/format.ts';

/** What an entry may name from the handbook tables, as functions, so that the language holds no table. */
export interface Handbook {
  /** ISO 286 limit deviations of a class such as `H7` at a nominal size, m, relative to the nominal. */
  classLimits(nominal: number, cls: string): { low: number; high: number } | { problem: string };
  /** Size of a drill, m: `#7`, `F`, `27/64`, `8.5 mm`. */
  drill(key: string): { size: number; name: string } | undefined;
  /** Major diameter of a thread, m: `3/8-16 UNC-2B`, `M8x1.25`. */
  thread(designation: string): { major: number; name: string } | undefined;
}

/** Where the text stands. */
export interface EntryContext {
  /** Kind of quantity the cell holds (`shared/quantities/quantities.ts`); absent while it is not settled. */
  quantity?: string;
  units: SheetUnits;
  /** Unit the value is shown in, where it is not the sheet's. */
  display?: string;
  /** Unit of the size that a tolerance in a field of its own belongs to, as the size was written. */
  sizeUnit?: string;
  handbook: Handbook;
  /** Decimal mark of the person typing. Stored text always has a point. */
  decimal?: '.' | ',';
  /** A list of readings belongs to `measured` alone; absent accepts it. */
  role?: Role;
}

/** For places without tables: nothing is found, and says so. */
export const NO_HANDBOOK: Handbook = {
  classLimits: () => ({ problem: 'no tolerance tables are at hand here' }),
  drill: () => undefined,
  thread: () => undefined,
};
