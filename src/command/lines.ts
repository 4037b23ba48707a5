import type { CellKind } from '../../cells/record/cell.ts';
import { type Band, bandOf } from '../../shared/checks/band.ts';
import { ownRule } from '../../shared/checks/decision-rules.ts';
import { isOutside } from '../../shared/checks/states.ts';
import { drawsWords, eachInWords } from '../../shared/checks/words.ts';
import { differenceUnit, formatQuantity, placesOf } from '../../shared/quantities/figures.ts';
import { besideOf, formatFigure, formatLimit } from '../../shared/quantities/printed-figure.ts';
import { displayUnit } from '../../shared/quantities/quantities.ts';
import type { Beside } from '../../shared/quantities/told-together.ts';
import type { CellRecord, DecisionRule, SheetUnits } from '../../shared/sheet/format.ts';
import { ROLE_WORDS } from '../../shared/sheet/role-words.ts';
import type { Unit } from '../../shared/units/units.ts';
import { type Extremes, extremesOf, isOfForm, type Judged } from '../engine/report/judged-by.ts';
import type { CellResult, Figure, OutputResult } from '../engine/rows/results.ts';
import { readAt } from './read-at.ts';

/** One printed line. */
export interface Line {
  number: string;
  /** Cell name, or `cell.output`. */
  name: string;
  /** How it comes by its value: given, measured, chosen, worked out, as measured, issued, planned. */
  by: string;
  value: string;
  limits: string;
  check: string;
  label: string;
}

export interface LineContext {
  units: SheetUnits;
  kinds: ReadonlyMap<string, CellKind>;
  /** The sheet's decision rule. */
  rule: DecisionRule;
  number: number;
}

const EMPTY: Line = { number: '', name: '', by: '', value: '', limits: '', check: '', label: '' };

/** How an output comes by its value: those of a library cell are worked out. */
const byWords = ({ role }: CellRecord): string => ROLE_WORDS[role === 'cell' ? 'worked' : role];

/** A figure with the band its verdict goes by, and the aim of a size that is cut. */
const valueText = (figure: Figure, unit: Unit, band: Band, cut = false): string => {
  const { text, spread } = formatFigure(figure, unit, { band });
  const aim =
    figure.aim === undefined || !cut ? '' : `, aim ${formatQuantity(figure.aim, unit, placesOf(figure))}`;
  return text + (spread === '' || band.mark === '' ? '' : ` ${band.mark}`) + aim;
};

const limitsText = (output: OutputResult, unit: Unit, beside: Beside | undefined): string => {
  const { lower, upper, wear } = output.limits ?? {};
  // A limit that is worked out has a spread of its own.
  const one = (figure: Figure): string => {
    const { spread } = formatFigure(figure, unit);
    return formatLimit(figure.value, unit, { beside }) + (spread === '' ? '' : ` ${spread}`);
  };
  const range =
    lower && upper
      ? `${one(lower)} to ${one(upper)}`
      : lower
        ? `not below ${one(lower)}`
        : upper
          ? `not above ${one(upper)}`
          : '';
  return [range, wear ? `worn ${one(wear)}` : ''].filter((part) => part !== '').join(', ');
};

/** By how much a limit is missed, in as many places as it takes to be something. */
const missText = (by: number, step: Unit): string => {
  const text = formatQuantity(by, step);
  return /[1-9]/.test(text) ? text : formatQuantity(by, step, { spread: by });
};

/** Verdicts, as new and in service, each on a line of its own; a limit that is missed with by how much. */
const checkTexts = (output: OutputResult, unit: Unit, rule: DecisionRule): string[] => {
  const { check } = output;
  if (output.idle || (check.asNew.state === 'no limits' && !check.inService)) return [''];
  const { by, state } = check.asNew;
  const missed = by !== undefined && by > 0 && isOutside(state);
  const step = differenceUnit(unit);
  const [asNew, inService] = eachInWords(check);
  const own = [ownRule(check.rule, rule), drawsWords(check)].filter((one) => one !== undefined).join('; ');
  const first = asNew + (missed ? `, by ${missText(by, step)}` : '') + (own === '' ? '' : ` (${own})`);
  return inService === undefined ? [first] : [first, inService];
};

const outputLines = (
  cell: CellRecord,
  name: string,
  label: string,
  output: OutputResult,
  unit: Unit,
  rule: DecisionRule,
  number: string,
): Line[] => {
  const [check = '', ...more] = checkTexts(output, unit, rule);
  const stands = output.stands ?? 'planned';
  const figure = stands === 'measured' ? output.measured : output.planned;
  const read = stands === 'measured' || cell.role === 'measured';
  const band = figure && bandOf(figure, output, read);
  const against = figure && band && besideOf(figure, band);
  const common = { name, label, limits: limitsText(output, unit, against), check };
  const value = figure
    ? valueText(figure, unit, band as Band, cell.role === 'chosen')
    : output.logical === undefined
      ? '—'
      : output.logical
        ? 'true'
        : 'false';
  const by = stands === 'measured' ? 'as measured' : stands === 'issued' ? 'released' : byWords(cell);
  const lines: Line[] = [{ number, by, value, ...common }];
  const below = (part: Partial<Line>): void => {
    lines.push({ ...EMPTY, ...part });
  };
  const other = stands === 'measured' ? output.planned : stands === 'issued' ? output.replanned : undefined;
  const beside = other
    ? {
        by: stands === 'measured' ? 'planned' : 'would now be',
        value: valueText(other, unit, bandOf(other, undefined, false)),
      }
    : undefined;
  // A list of readings is shown by its mean, and judged by what is worst of it.
  const extremes = output.idle ? undefined : extremesOf(output);
  if (extremes) below({ by: 'judged by', value: extremesText(extremes, unit) });
  const [first, ...rest] = more;
  if (beside || first !== undefined) below({ ...beside, check: first ?? '' });
  for (const text of rest) below({ check: text });
  return lines;
};

/** The least and the greatest of a list of readings. */
const extremesText = ({ least, greatest }: Extremes, unit: Unit): string => {
  const one = ({ figure, band }: Judged): string => valueText(figure, unit, band);
  return `least ${one(least)}, greatest ${one(greatest)}`;
};

const unitOf = (
  cell: CellRecord,
  name: string,
  output: OutputResult,
  { units, kinds }: LineContext,
): Unit => {
  const inKind = kinds.get(cell.kind ?? '')?.outputs.find((one) => one.name === name)?.display?.[
    units.length
  ];
  return displayUnit(output.quantity, units, output.display ?? inKind);
};

/** Outputs of a library cell that are printed: those of its face, and those with limits, a reading or settings of their own. */
const isPrinted = (
  cell: CellRecord,
  kind: CellKind | undefined,
  name: string,
  output: OutputResult,
): boolean => {
  if (output.idle) return false;
  const face = kind?.outputs.find((one) => one.name === name)?.face ?? false;
  return face || output.limits !== undefined || cell.outputs?.[name] !== undefined;
};

/** The lines of one cell; of one that is set aside, its first says so. */
export const linesOf = (cell: CellRecord, result: CellResult, context: LineContext): Line[] => {
  const lines = ownLines(cell, result, context);
  const [first, ...rest] = lines;
  return first && result.aside !== undefined
    ? [{ ...first, check: `set aside: ${result.aside}` }, ...rest]
    : lines;
};

const ownLines = (cell: CellRecord, result: CellResult, context: LineContext): Line[] => {
  const number = String(context.number);
  const name = cell.name ?? '';
  if (cell.role !== 'cell') {
    const value = result.outputs.value;
    if (!value) return [];
    const unit = unitOf(cell, 'value', value, context);
    const lines = outputLines(cell, name, cell.label ?? '', value, unit, context.rule, number);
    const [first] = lines as [Line];
    const at = readAt(cell, result);
    if (first.check === '' && at) lines[0] = { ...first, check: `read ${at}` };
    const round = result.outputs.out_of_round;
    if (round && isOfForm('out_of_round', round) && (round.planned ?? round.measured))
      lines.push(
        ...outputLines(
          cell,
          name ? `${name}.out_of_round` : '',
          'out of round',
          round as OutputResult,
          unit,
          context.rule,
          '',
        ),
      );
    return lines;
  }
  const kind = context.kinds.get(cell.kind ?? '');
  const title = cell.label ?? kind?.title ?? cell.kind ?? '';
  const heading: Line = { number, name, by: '', value: '', limits: '', check: '', label: title };
  const order = kind?.outputs.map((output) => output.name) ?? Object.keys(result.outputs);
  const lines = order.flatMap((output) => {
    const found = result.outputs[output];
    if (!found || !isPrinted(cell, kind, output, found)) return [];
    const label = kind?.outputs.find((one) => one.name === output)?.label ?? output;
    return outputLines(
      cell,
      `${name}.${output}`,
      label,
      found,
      unitOf(cell, output, found, context),
      context.rule,
      '',
    );
  });
  return [heading, ...lines];
};
