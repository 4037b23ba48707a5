import type { CheckState } from '../../../shared/checks/check.ts';

/** A verdict that is another than before. */
export interface ChangedCheck {
  title: string;
  from: CheckState;
  to: CheckState;
}

const NAMED = 3;

/** One sentence for all of them, so that an edit that moves twenty checks is one thing to hear. */
export const wordChanges = (changes: readonly ChangedCheck[]): string => {
  if (changes.length === 0) return '';
  const named = changes.slice(0, NAMED).map(({ title, from, to }) => `${title}: ${to}, was ${from}`);
  const more = changes.length - named.length;
  return `${named.join('. ')}${more > 0 ? `. And ${more} more ${more === 1 ? 'check' : 'checks'} changed` : ''}.`;
};
