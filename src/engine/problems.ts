import { type Problem, problem } from '../../shared/problem.ts';
import { DIVISION, type GridError, PROBLEM_MESSAGE } from './grid.ts';
import type { Network, Row } from './network.ts';

/**
 * The problem behind an error value: that of the row where it began. Asked for another cell than that one, it says that
 * this cell waits for it.
 */
export function problemOf(
  network: Network,
  error: GridError,
  asked: string,
  nameOf: (id: string) => string,
): Problem {
  const root = error.root === undefined ? undefined : network.rowAt(error.root);
  const found = root ? rootProblem(root, error, nameOf) : problem('arithmetic', wordsOf(error.message));
  const origin = found.originId ?? root?.owner;
  if (origin === undefined || origin === asked) return found;
  const name = nameOf(origin);
  return problem(found.kind === 'blank' ? 'blank' : 'upstream', `Waits for \`${name}\`: ${found.message}`, {
    origin: name,
    originId: origin,
  });
}

function rootProblem(root: Row, error: GridError, nameOf: (id: string) => string): Problem {
  const place = { origin: nameOf(root.owner), originId: root.owner };
  if (error.message === PROBLEM_MESSAGE) {
    if (root.ring) return root.ring;
    const body = root.definition.body;
    if (body.kind === 'problem')
      return { ...body.problem, origin: body.problem.origin ?? place.origin, originId: root.owner };
  }
  const kind = root.key.includes('?') ? 'range' : 'arithmetic';
  return problem(kind, wordsOf(error.message), place);
}

function wordsOf(message: string): string {
  if (message === DIVISION) return 'Division by zero: what stands below the stroke is 0 here.';
  if (message === '') return 'The result is not a finite number.';
  return message.charAt(0).toUpperCase() + message.slice(1) + (/[.!?]$/.test(message) ? '' : '.');
}

/** An error in one case only: the figure stands, but its spread is not known. */
export function caseProblem(label: string): Problem {
  return problem(
    'arithmetic',
    `At one end of "${label}" this cannot be computed, so its spread is not known.`,
  );
}
