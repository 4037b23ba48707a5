import type { Sheet } from './sheet.ts';

/** What people call the line of that name; the name itself where there is none. */
export const titled = (sheet: Pick<Sheet, 'idOf' | 'titleOf'>, name: string): string => {
  const id = sheet.idOf(name);
  return id === undefined ? name : sheet.titleOf(id);
};
