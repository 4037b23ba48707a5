import { GRADE_WORDS, GRADES } from '../../../cells/grades.ts';
import { grouped } from '../../../cells/groups.ts';
import type { CellKind } from '../../../cells/record/cell.ts';
import { quantityKinds } from '../../../shared/quantities/quantities.ts';
import { bullets, part, plain, table } from './markdown.ts';

const link = (kind: CellKind): string => `[${plain(kind.title)}](book/${kind.key}.md)`;

const byQuantity = (
  kinds: readonly CellKind[],
  of: (kind: CellKind) => readonly (string | undefined)[],
): string =>
  bullets(
    quantityKinds.flatMap(({ name, label }) => {
      const found = kinds.filter((kind) => of(kind).includes(name));
      return found.length > 0 ? [`**${label}**: ${found.map(link).join(', ')}`] : [];
    }),
  );

/** How many worked examples of each grade a cell has. */
const gradeCounts = (kind: CellKind): number[] =>
  GRADES.map((grade) => kind.examples.filter((example) => example.grade === grade).length);

const checks = (kinds: readonly CellKind[]): string =>
  table(
    ['cell', ...GRADES.map((grade) => GRADE_WORDS[grade])],
    kinds.map((kind) => [link(kind), ...gradeCounts(kind).map((n) => (n > 0 ? String(n) : ''))]),
  );

/** The way into the book: by group, by what goes in and what comes out, and how each cell is held. */
export const indexPage = (all: Iterable<CellKind>): string => {
  const groups = grouped(all);
  const kinds = groups.flatMap((one) => one.kinds);
  return [
    '# The cell book\n\n',
    'Every cell of the library: what it is for, its formulas, what must hold, where it comes from, what to be careful of, and an\n',
    'example worked out by the engine as this was written (`npm run book`). The same book is in the program.\n',
    ...groups.map(({ group, kinds: own }) =>
      part(
        `## ${group.charAt(0).toUpperCase()}${group.slice(1)}`,
        table(
          ['cell', 'what it is for'],
          own.map((kind) => [link(kind), plain(kind.purpose)]),
        ),
      ),
    ),
    part(
      '## By what comes out',
      byQuantity(kinds, (kind) => kind.outputs.map((output) => output.quantity)),
    ),
    part(
      '## By what goes in',
      byQuantity(kinds, (kind) => kind.inputs.map((input) => input.quantity)),
    ),
    part('## Worked examples by how their figures are known', checks(kinds)),
  ].join('');
};
