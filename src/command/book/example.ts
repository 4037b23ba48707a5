import { GRADE_WORDS } from '../../../cells/grades.ts';
import type { CellKind, WorkedExample } from '../../../cells/record/cell.ts';
import { formatFigure } from '../../../shared/quantities/printed-figure.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import { type ExpectedFigure, type WorkedOut, workOut } from '../../engine/book/worked-example.ts';
import type { Library } from '../../engine/rows/library.ts';
import type { OutputResult } from '../../engine/rows/results.ts';
import { bullets, code, plain, table } from './markdown.ts';

/** `one part in 1000` reads worse than a percentage; what is closer than a millionth is rounding. */
const nearness = (within: string | number): string => {
  if (typeof within === 'string') return `± ${plain(within)}`;
  return within < 1e-6 ? 'to rounding' : `± ${Number((within * 100).toPrecision(3))} %`;
};

const entered = (example: WorkedExample): string =>
  table(
    ['entered', ''],
    Object.entries(example.inputs).flatMap(([name, entry]) =>
      typeof entry === 'string'
        ? [[code(name), plain(entry)]]
        : Object.entries(entry).map(([output, text]) => [code(`${name}.${output}`), plain(text)]),
    ),
  );

const figureText = (output: OutputResult, { units }: WorkedOut): string => {
  if (output.logical !== undefined) return output.logical ? 'yes' : 'no';
  if (!output.planned) return output.problem ? plain(output.problem.message) : '—';
  return plain(formatFigure(output.planned, displayUnit(output.quantity, units, output.display)).text);
};

const expectedText = (found: ExpectedFigure | undefined, example: WorkedExample): string => {
  const wanted = found && example.expect[found.output];
  return wanted ? `${plain(wanted.value)}, ${nearness(wanted.within)}` : '';
};

/** An example, worked out by the engine as the page is written. Throws where what comes out is not what is expected. */
export const exampleText = (library: Library, kind: CellKind, example: WorkedExample): string => {
  const worked = workOut(library, kind, example);
  for (const one of worked.expected)
    if (!one.holds)
      throw new RangeError(
        `${kind.key}, ${example.title}: ${one.output} is ${one.got}, not ${one.expected} (SI)`,
      );
  const rows = kind.outputs.flatMap((output) => {
    const result = worked.result.outputs[output.name];
    if (!result || result.idle) return [];
    const expected = worked.expected.find((one) => one.output === output.name);
    const value = figureText(result, worked);
    return [[plain(output.label), output.face ? `**${value}**` : value, expectedText(expected, example)]];
  });
  const remarks = worked.result.remarks.map((remark) => plain(remark.message));
  return [
    `${plain(example.source)} (${GRADE_WORDS[example.grade]}).\n`,
    entered(example),
    table(['worked out', '', 'source gives'], rows),
    remarks.length > 0 ? `The cell says:\n\n${bullets(remarks)}` : '',
  ]
    .filter((text) => text !== '')
    .join('\n');
};
