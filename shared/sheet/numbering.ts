import type { Role } from './format.ts';

/** Numbers of the lines, on the page, on paper and in the command line: every line with a value is counted through; headings and remarks have none. */
export const numberLines = (
  order: readonly string[],
  roleOf: (id: string) => Role | undefined,
): Map<string, number> => {
  const numbers = new Map<string, number>();
  for (const id of order) {
    const role = roleOf(id);
    if (role !== undefined && role !== 'section' && role !== 'remark') numbers.set(id, numbers.size + 1);
  }
  return numbers;
};
