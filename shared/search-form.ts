/** A text as it is searched for: without case and without accents. */
export const searchForm = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
