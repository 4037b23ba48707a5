import { cautionTexts } from '../../../cells/record/caution.ts';
import type { CellInput, CellKind } from '../../../cells/record/cell.ts';
import type { Library } from '../../engine/rows/library.ts';
import { exampleText } from './example.ts';
import { conditionText, outputText } from './formulas.ts';
import { bullets, code, part, plain, table } from './markdown.ts';

const takes = (library: Library, { quantity, record, choice }: CellInput): string => {
  if (record) return `a [${record}](${record}.md) cell`;
  if (choice) return library.tables.has(choice) ? `a row of the table ${code(choice)}` : 'in words';
  return quantity ?? '';
};

const whenBlank = (input: CellInput): string => {
  if (input.default !== undefined) return code(input.default);
  return input.optional ? 'may stay blank' : 'must be given';
};

const inputRow = (library: Library, input: CellInput): string[] => [
  code(input.name),
  plain(input.label) + (input.hint ? `. ${plain(input.hint)}` : ''),
  takes(library, input),
  whenBlank(input),
  input.sensible ? input.sensible.map(plain).join(' to ') : '',
];

const sources = (kind: CellKind): string[] => [
  ...kind.sources.map(plain),
  ...kind.inputs.flatMap((input) => (input.source ? [`${plain(input.label)}: ${plain(input.source)}`] : [])),
];

const mustHold = (kind: CellKind): string =>
  (kind.validity ?? [])
    .map(
      ({ holds, otherwise, grade }) =>
        `${conditionText(holds)}\n${grade === 'error' ? 'Otherwise no result' : 'Otherwise a caution'}: ${plain(otherwise)}\n`,
    )
    .join('\n');

/** One cell of the book. */
export const kindPage = (library: Library, kind: CellKind): string =>
  [
    `# ${plain(kind.title)}\n\n${plain(kind.purpose)}\n`,
    `\nCell ${code(kind.key)}, edition ${kind.edition}, of the group *${kind.group}* in [the cell book](../BOOK.md).\n`,
    part('## Caution', bullets(cautionTexts(kind).map(plain))),
    part(
      '## What goes in',
      table(
        ['name', '', 'what it is', 'when blank', 'usual'],
        kind.inputs.map((input) => inputRow(library, input)),
      ),
    ),
    part('## What comes out', kind.outputs.map((output) => outputText(kind, output)).join('\n')),
    part('## What must hold', mustHold(kind)),
    part('## Taken for granted', bullets(kind.assumptions.map(plain))),
    part('## Sources', bullets(sources(kind))),
    ...kind.examples.map((example) =>
      part(`## Worked example: ${plain(example.title)}`, exampleText(library, kind, example)),
    ),
  ].join('');
