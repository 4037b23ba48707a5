import { type Problem, problem } from '../../../shared/problem.ts';
import type { Fault } from '../bounds/fault.ts';
import { DIVISION, type Grid, type GridError, OVERFLOW, PROBLEM_MESSAGE } from '../network/grid.ts';
import type { BrokenCase, Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import { isValidity } from '../rows/key.ts';
import type { Figure } from '../rows/results.ts';

/**
 * The problem behind an error value: that of the row where it began. Asked for another cell than that one, it says that
 * this cell waits for it.
 */
export function problemOf(
  network: Network,
  grid: Grid,
  at: { row: Row; column: number },
  error: GridError,
  asked: string,
  nameOf: (id: string) => string,
): Problem {
  const root =
    error.message === OVERFLOW
      ? overflowRoot(grid, at.row, at.column)
      : error.root === undefined
        ? undefined
        : network.rowAt(error.root);
  const found = root ? rootProblem(root, error, nameOf) : problem('arithmetic', wordsOf(error.message));
  const origin = found.originId ?? root?.owner;
  if (origin === undefined || origin === asked) return found;
  const name = nameOf(origin);
  const waits = found.kind === 'blank' || found.kind === 'ask';
  const message = `Waits for \`${name}\`${waits ? '' : ', in error'}${saidOf(name, found.message)}`;
  return problem(found.kind === 'blank' ? 'blank' : 'upstream', message, {
    origin: name,
    originId: origin,
    ...(found.kind === 'ask' ? { waits } : {}),
  });
}

/** What is said of a cell that has just been named: its name is not said twice. */
function saidOf(name: string, message: string): string {
  const named = `\`${name}\``;
  if (message.startsWith(`${named}: `)) return message.slice(named.length);
  return /^ (has|is) /.test(message.slice(named.length)) && message.startsWith(named)
    ? `, which${message.slice(named.length)}`
    : `: ${message}`;
}

/** Follows an overflow up to the row that depends on no other row in error. */
function overflowRoot(grid: Grid, row: Row, column: number): Row {
  const wrong = (of: Row): boolean =>
    typeof (grid.value(of.slot, column) ?? grid.nominal(of.slot)) === 'object';
  let root = row;
  for (let above = row.uses.find(wrong); above; above = above.uses.find(wrong)) root = above;
  return root;
}

function rootProblem(root: Row, error: GridError, nameOf: (id: string) => string): Problem {
  const place = { origin: nameOf(root.owner), originId: root.owner };
  if (error.message === PROBLEM_MESSAGE) {
    if (root.ring) return root.ring;
    const body = root.definition.body;
    if (body.kind === 'problem')
      return {
        ...body.problem,
        origin: body.problem.origin ?? place.origin,
        originId: body.problem.originId ?? root.owner,
      };
  }
  const kind = isValidity(root.key) ? 'range' : 'arithmetic';
  return problem(kind, wordsOf(error.message), place);
}

function wordsOf(message: string): string {
  if (message === DIVISION) return 'Division by zero: what stands below the stroke is 0 here.';
  if (message === '' || message === OVERFLOW) return 'The result is not a finite number.';
  return message.charAt(0).toUpperCase() + message.slice(1) + (/[.!?]$/.test(message) ? '' : '.');
}

const openSide = (figure: Figure | undefined): string =>
  figure?.low === Number.NEGATIVE_INFINITY
    ? figure.high === Number.POSITIVE_INFINITY
      ? ''
      : ' below'
    : figure?.high === Number.POSITIVE_INFINITY
      ? ' above'
      : '';

const WHY: Readonly<Record<Fault['why'], string>> = {
  divisor: 'what stands below the stroke passes through 0',
  pole: 'the value grows beyond every bound',
  'no value': 'there are places where this has no value',
  'says nothing': 'a function in it does not say how it moves with its numbers',
};

/** What a cell says where what must hold for it does not, of the row that asks for it: `IF(holds; 1; FAIL(words))`. */
function refusalOf({ definition: { body } }: Row): string | undefined {
  if (body.kind !== 'formula' || body.expr.kind !== 'call') return undefined;
  const otherwise = body.expr.args[2];
  const words = otherwise?.kind === 'call' && otherwise.fn === 'FAIL' ? otherwise.args[0] : undefined;
  return words?.kind === 'text' ? words.text : undefined;
}

/** A figure without bound on one side or both: by which source, and in which cell that begins. */
export function unboundedProblem(
  { row, source, why }: Fault,
  figure: Figure,
  asked: string,
  nameOf: (id: string) => string,
): Problem {
  const refused = why === 'no value' ? refusalOf(row) : undefined;
  const body = source?.definition.body;
  const label = body?.kind === 'source' ? `within the spread of "${body.ends.label}" ` : '';
  const origin = nameOf(row.owner);
  const where = row.owner === asked ? '' : ` in \`${origin}\``;
  const told = refused
    ? `within its spread there are places without a value${where}. ${refused}`
    : `${label}${WHY[why]}${where}.`;
  return problem('arithmetic', `Not bounded${openSide(figure)}: ${told}`, {
    origin,
    originId: row.owner,
  });
}

/** An error in one case only: the figure stands, but its spread is not known. */
export function caseProblem(
  network: Network,
  grid: Grid,
  row: Row,
  broken: BrokenCase,
  asked: string,
  nameOf: (id: string) => string,
): Problem {
  const at = { row, column: broken.column };
  const behind = broken.error ? problemOf(network, grid, at, broken.error, asked, nameOf) : undefined;
  const why = behind ? ` ${behind.message}` : '';
  const message = broken.unknown
    ? `The spread is not known yet.${why}`
    : `Not bounded${openSide(row.figure)}: at one end of "${broken.label}" this cannot be computed.${why}`;
  return problem(broken.unknown ? (behind?.kind ?? 'blank') : 'arithmetic', message, {
    ...(behind?.origin ? { origin: behind.origin } : {}),
    ...(behind?.originId ? { originId: behind.originId } : {}),
  });
}
