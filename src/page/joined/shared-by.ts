import { saidName } from './said-name.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

/** Who shared something, and when by their clock: `shared by Desk, 30 Nov 2026, 20:31`. */
export const sharedByWords = ({ by, since }: { by: string; since: number }): string => {
  // A clock may say what no calendar has.
  const date = Math.abs(since) <= 8.64e15 ? `, ${when.format(since)}` : '';
  return `shared by ${saidName(by)}${date}`;
};
