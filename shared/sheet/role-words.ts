import type { CellRecord, Role } from './format.ts';

export const ROLE_WORDS: Record<Role, string> = {
  given: 'given',
  measured: 'measured',
  chosen: 'chosen',
  worked: 'worked out',
  cell: 'from the library',
  section: 'heading',
  remark: 'remark',
};

/** What each way to come by a value means, said where one is chosen. */
export const ROLE_MEANING: Record<'given' | 'measured' | 'chosen' | 'worked', string> = {
  given: 'maker’s data: ± is a tolerance',
  measured: 'read off the part: ± is the doubt of the reading, k = 2',
  chosen: 'a decision: held, only its own tolerance goes on',
  worked: 'a consequence: the spread of what it hangs on goes on',
};

export const roleWord = (record: CellRecord): string =>
  record.issued ? 'released' : ROLE_WORDS[record.role];
