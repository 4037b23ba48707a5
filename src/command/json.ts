import { bandOf } from '../../shared/checks/band.ts';
import { codeOf, isProven, type VerdictCode } from '../../shared/checks/states.ts';
import type { ProblemKind } from '../../shared/problem.ts';
import type { CellRecord, DecisionRule, SheetFile } from '../../shared/sheet/format.ts';
import { forksOf } from '../../shared/sheet/ways.ts';
import { standingOf } from '../engine/report/standing.ts';
import type { CellResult, Figure, OutputResult, Slip } from '../engine/rows/results.ts';
import type { Finding } from './findings.ts';
import { readAt } from './read-at.ts';

/** Coherent SI unit of each kind of quantity; of a number, `1`. */
const SI: Readonly<Record<string, string>> = {
  length: 'm',
  number: '1',
  angle: 'rad',
  'interference per diameter': '1',
  temperature: 'K',
  'temperature difference': 'K',
  'expansion coefficient': '1/K',
  force: 'N',
  pressure: 'Pa',
  torque: 'N.m',
  energy: 'J',
  power: 'W',
  area: 'm2',
  volume: 'm3',
  mass: 'kg',
  density: 'kg/m3',
  speed: 'm/s',
  'rotational speed': '1/s',
  flow: 'm3/s',
  viscosity: 'Pa.s',
  'kinematic viscosity': 'm2/s',
  time: 's',
  stiffness: 'N/m',
  conductivity: 'W/(m.K)',
  'pressure times speed': 'W/m2',
};

const siUnitOf = (quantity: string | undefined): string | null => SI[quantity ?? ''] ?? null;

/** What is printed of one figure, SI. The spread is left out where it is not known. */
interface JsonFigure {
  value: number;
  /** Worst case; an end without bound is left out. */
  low?: number;
  high?: number;
  /** How far it reaches is not settled: at most to these ends. */
  atMost?: boolean;
  /** Standard uncertainty. */
  u?: number;
  /** Its effective degrees of freedom, where they are limited. */
  dof?: number;
}

export interface JsonResult extends Partial<JsonFigure> {
  unit: string | null;
  stands: 'planned' | 'measured' | 'issued';
  /** It belongs to a way that is not taken, and counts no more: the way taken in its place. */
  setAside?: string;
  /** The decision rule of its verdict, where there is one. */
  rule?: DecisionRule;
  /** Verdict as new, and where there is a wear limit the one in service. */
  check: string;
  /** The same as a code that stays when the words are put better. */
  code: VerdictCode;
  inService?: string;
  inServiceCode?: VerdictCode;
  /** Of what alone it is proven, where that is less than the part. */
  where?: string;
  /** Of what alone its readings tell, proven or not: `at one place`, `in one direction`. */
  read?: string;
  /** How centre, u and coverage came about, where there is a verdict. */
  method?: 'linear' | 'draws' | 'worst case' | 'bare figure';
  centre?: number;
  /** The band the verdict goes by. */
  coverage?: [low: number, high: number];
  /** Probability of conformance to the limits of a new part, by draws. */
  conformance?: number;
  draws?: number;
  /** By how much the limit concerned is missed (positive) or kept (negative). */
  by?: number;
  at?: string;
  side?: string;
  lower?: number;
  upper?: number;
  wear?: number;
  /** The plan, where a measured or an issued value stands. */
  planned?: JsonFigure;
  logical?: boolean;
  error?: string;
  /** Kind of the error, which stays as it is too. */
  errorKind?: ProblemKind;
}

interface JsonQuestion {
  /** Which slip it may be; `apart` where none explains it. */
  kind: string;
  field: string;
  question: string;
  /** The entry offered in its place. */
  offer?: string;
  /** How far the figure of the line lies off for it, SI. */
  cost?: number;
}

const questionOf = ({ key, field, message, offer, cost }: Slip): JsonQuestion => ({
  kind: key.split(':')[0] as string,
  field,
  question: message,
  ...(offer === undefined ? {} : { offer }),
  ...(cost === undefined ? {} : { cost }),
});

/** What is not known, or has no bound, is left out. */
const figure = ({ value, atMost, low, high, u, dof }: Figure): JsonFigure => ({
  value,
  ...Object.fromEntries(Object.entries({ low, high, u, dof }).filter(([, one]) => Number.isFinite(one))),
  ...(atMost ? { atMost } : {}),
});

/** Which way the verdict came about, and the band it goes by. */
const methodOf = (output: OutputResult, standing: Figure): Partial<JsonResult> => {
  const { check, drawn } = output;
  if (check.rule === 'simple') return { method: 'bare figure' };
  const { low, high } = bandOf(standing, output, true);
  const coverage: Partial<JsonResult> = [low, high].every(Number.isFinite) ? { coverage: [low, high] } : {};
  if (check.rule === 'worst-case') return { method: 'worst case', ...coverage };
  if (!drawn || drawn.draws === 0)
    return {
      method: 'linear',
      ...(Number.isFinite(standing.centre) ? { centre: standing.centre } : {}),
      ...coverage,
    };
  const { centre, u, draws } = drawn;
  return {
    method: 'draws',
    centre,
    u,
    ...coverage,
    ...(check.conformance === undefined ? {} : { conformance: check.conformance }),
    draws,
  };
};

const resultOf = (output: OutputResult, role: CellRecord['role']): JsonResult => {
  const { check, limits, problem } = output;
  const stands = output.stands ?? 'planned';
  const standing = stands === 'measured' ? output.measured : output.planned;
  const plan = stands === 'measured' ? output.planned : stands === 'issued' ? output.replanned : undefined;
  const { by, at, side } = check.asNew;
  return {
    ...(standing ? figure(standing) : {}),
    unit: siUnitOf(output.quantity),
    // A reading has no plan: what it was read at stands.
    stands: role === 'measured' ? 'measured' : stands,
    ...(limits ? { rule: check.rule } : {}),
    ...(limits && standing ? methodOf(output, standing) : {}),
    check: check.asNew.state + (check.where && isProven(check.asNew.state) ? ', where read' : ''),
    code: codeOf(check.asNew.state, check.where),
    ...(check.inService
      ? { inService: check.inService.state, inServiceCode: codeOf(check.inService.state, check.where) }
      : {}),
    ...(check.where ? { where: check.where } : {}),
    ...(by === undefined ? {} : { by }),
    ...(at ? { at } : {}),
    ...(side ? { side } : {}),
    ...(limits?.lower ? { lower: limits.lower.value } : {}),
    ...(limits?.upper ? { upper: limits.upper.value } : {}),
    ...(limits?.wear ? { wear: limits.wear.value } : {}),
    ...(plan ? { planned: figure(plan) } : {}),
    ...(output.logical === undefined ? {} : { logical: output.logical }),
    ...(problem ? { error: problem.message, errorKind: problem.kind } : {}),
  };
};

/** What a cell says about itself, as sentences. */
export interface JsonSaid {
  /** Entries that are probably not what was meant; open until answered on the page. */
  questions?: JsonQuestion[];
  cautions?: string[];
  /** What is in error, missing or outside what the cell can take. */
  problems?: string[];
}

const KEYS = { error: 'problems', open: 'problems', caution: 'cautions' } as const;

const saidOf = (findings: readonly Finding[], slips: readonly Slip[]): JsonSaid => {
  const said: JsonSaid = slips.length > 0 ? { questions: slips.map(questionOf) } : {};
  for (const { grade, message } of findings) {
    if (grade === 'question') continue;
    const key = KEYS[grade];
    said[key] = [...(said[key] ?? []), message];
  }
  return said;
};

/** How the sheet stands as a whole, in the words the page and the print have: `Proven in limits: 3 of 5. Open: ...` */
interface JsonHead {
  words: string;
  /** Checks that count, and those of them that are proven. */
  checks: number;
  proven: number;
  /** State of the check that asks for most, and its code. */
  check: string;
  code: VerdictCode;
  /** The way taken to each end that has several; null where none is, and each counts. */
  ways?: Record<string, string | null>;
}

/** No line is called so: a name has no blank, and an id that has gives way. */
const HEAD = 'head line';

const headOf = (
  cells: readonly { cell: CellRecord; result: CellResult }[],
  { units, ways }: SheetFile,
): JsonHead => {
  const { words, total, proven, state } = standingOf(
    cells.map(({ cell, result }) => ({ record: cell, result })),
    units,
  );
  const forks = forksOf(
    cells.map(({ cell }) => cell),
    ways,
  ).map(({ to, taken }) => [to, taken ?? null] as const);
  return {
    words,
    checks: total,
    proven,
    check: state,
    code: codeOf(state),
    ...(forks.length > 0 ? { ways: Object.fromEntries(forks) } : {}),
  };
};

/**
 * The head line, then results by cell name and `cell.output`; a cell without a name goes by its id, and one whose name or id an earlier line
 * has already, by the number of its line besides: no line takes the place of another. What nothing was asked of is left out.
 * What a cell says about itself stands with its value; of a cell of the library under its own title.
 */
export const jsonOf = (
  cells: readonly { cell: CellRecord; result: CellResult; number: number; findings: readonly Finding[] }[],
  file: SheetFile,
): Record<string, (JsonResult & JsonSaid) | JsonSaid | JsonHead> => {
  // No prototype: a cell may be called as one of an object's own workings is.
  const all: ReturnType<typeof jsonOf> = Object.create(null);
  all[HEAD] = headOf(cells, file);
  const titles = titlesOf(cells);
  for (const { cell, result, number, findings } of cells) {
    const title = titles.get(number) as string;
    for (const [output, found] of Object.entries(result.outputs)) {
      const key = output === 'value' && cell.role !== 'cell' ? title : `${title}.${output}`;
      if (!found.idle)
        all[key] = {
          ...resultOf(found, cell.role),
          ...(result.aside === undefined ? {} : { setAside: result.aside }),
        };
    }
    const own = result.problems.find(({ kind }) => kind !== 'blank');
    if (own && Object.keys(result.outputs).length === 0)
      all[title] = {
        unit: null,
        stands: 'planned',
        check: 'entry in error',
        code: codeOf('entry in error'),
        error: own.message,
        errorKind: own.kind,
      };
    const read = readAt(cell, result);
    const one = all[title];
    if (read && one && 'stands' in one) one.read = read;
    const said = saidOf(findings, result.slips);
    if (Object.keys(said).length > 0) all[title] = { ...all[title], ...said };
  }
  return all;
};

/** What each line is called, by its number: names before ids, so that no id stands in for a name. */
function titlesOf(cells: readonly { cell: CellRecord; number: number }[]): Map<number, string> {
  const titles = new Map<number, string>();
  const taken = new Set<string>([HEAD]);
  // `journal.least` is the least of `journal`, and no id.
  const isTaken = (title: string): boolean => taken.has(title) || taken.has(title.split('.', 1)[0] as string);
  for (const { cell, number } of cells.toSorted((a, b) => Number(!a.cell.name) - Number(!b.cell.name))) {
    const own = cell.name ?? cell.id;
    let title = own;
    for (let n = 0; isTaken(title); n++) title = `${'line '.repeat(n)}line ${number}: ${own}`;
    taken.add(title);
    titles.set(number, title);
  }
  return titles;
}
