import type { Entry, Literal } from './syntax.ts';

/** The one size an entry stands for, whatever it was written as; absent for a formula, limits, a list or a blank. */
export const sizeOf = (entry: Entry): Literal | undefined => {
  switch (entry.kind) {
    case 'value':
    case 'designation':
    case 'offset':
      return entry.value;
    case 'fit':
      return entry.nominal;
    default:
      return undefined;
  }
};
