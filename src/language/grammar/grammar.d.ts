// What the grammar compiler makes of a *.grammar file at build time.
declare module '*.grammar' {
  import type { LRParser } from '@lezer/lr';
  export const parser: LRParser;
}

// Term ids by name. The names are the grammar's own, so they cannot be listed here: each import is a number.
declare module '*.grammar.terms';
