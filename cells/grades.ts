import type { WorkedExample } from './record/cell.ts';

export type Grade = WorkedExample['grade'];

/** How an example's figures are known, from the firmest. */
export const GRADES: readonly Grade[] = ['seen', 'computed', 'memory', 'recomputed'];

export const GRADE_WORDS: Readonly<Record<Grade, string>> = {
  seen: 'seen in print',
  computed: 'computed by an independent method',
  memory: 'from memory',
  recomputed: 'recomputed by a second method of our own',
};
