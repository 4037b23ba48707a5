import { bandOf } from '../../../shared/checks/band.ts';
import { leading } from '../../../shared/checks/leading.ts';
import {
  type CheckState,
  gradeOf,
  isPartState,
  isProven,
  type Verdict,
} from '../../../shared/checks/states.ts';
import { besideOf, formatFigure, formatLimit } from '../../../shared/quantities/printed-figure.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { CellRecord, SheetUnits } from '../../../shared/sheet/format.ts';
import type { CellResult, OutputResult } from '../rows/results.ts';
import { extremesOf, heldTo } from './judged-by.ts';

/** How a whole sheet stands: what of it is proven, and what is open. */
export interface Standing {
  /** Checks that count; 0 where nothing has limits. */
  total: number;
  proven: number;
  /** State of the check that asks for most. */
  state: CheckState;
  /** The head line: the same on the page, in the list, on paper and from the command line. */
  words: string;
}

interface Line {
  record: Pick<CellRecord, 'role' | 'label' | 'name' | 'display' | 'outputs'>;
  result: Pick<CellResult, 'aside' | 'outputs'> | undefined;
}

export interface StandingOptions {
  /** A decimal comma. */
  comma?: boolean;
  /** Labels in the trade words of the user. */
  say?: (text: string) => string;
}

const NO_LIMITS = 'No limits to check against yet.';

/** So many of a kind are named; the rest is counted. */
const NAMED = 3;

const calculated = (state: CheckState): boolean => state.startsWith('holds by calculation');

type Kind = 'out' | 'open' | 'waiting' | 'settling' | 'planned' | 'calculated' | 'proven';
/** The one that asks for most first. */
const ORDER: readonly Kind[] = ['out', 'open', 'waiting', 'settling', 'planned', 'calculated', 'proven'];

const kindOf = (state: CheckState): Kind => {
  switch (gradeOf(state)) {
    case 'out':
      return 'out';
    case 'open':
      return 'open';
    case 'in':
    case 'near':
      return isProven(state) ? 'proven' : calculated(state) ? 'calculated' : 'planned';
    default:
      return state === 'being settled' ? 'settling' : 'waiting';
  }
};

interface Found {
  line: Line;
  name: string;
  output: OutputResult;
  verdict: Verdict;
}

/** `Bush bore, finished 1.7475 in against 1.7470 in`: what stands, and the limit it is held to. */
function namedWords(
  { line, name, output, verdict }: Found,
  units: SheetUnits,
  options: StandingOptions,
): string {
  const { record } = line;
  const { comma = false, say = (text) => text } = options;
  const own = record.label || record.name || 'a line without a name';
  const title = say(record.role === 'cell' ? `${own}, ${output.label ?? name}` : own);
  const wish =
    record.role === 'cell'
      ? (record.outputs?.[name]?.display ?? output.display)
      : (record.display ?? output.display);
  const unit = displayUnit(output.quantity, units, wish);
  const stands = output.stands === 'measured' ? output.measured : output.planned;
  const limit = verdict.at && output.limits?.[verdict.at];
  if (!stands) return title;
  const read = output.stands === 'measured' || record.role === 'measured';
  const extremes = extremesOf(output);
  // Not the mean, which may well keep a limit that the least does not.
  const held = verdict.at && extremes && heldTo(extremes, verdict.at, output.limits);
  const { figure, band } = held ?? { figure: stands, band: bandOf(stands, output, read) };
  const number = formatFigure(figure, unit, { comma, band }).value;
  const value = held ? `${held === extremes?.least ? 'least' : 'greatest'} ${number}` : number;
  if (!limit) return `${title} ${value}`;
  return `${title} ${value} against ${formatLimit(limit.value, unit, { comma, beside: besideOf(figure, band) })}`;
}

/** Every check of a sheet that counts: not of a way that is not taken, nor of what was left blank for good. */
function checksOf(lines: Iterable<Line>): Found[] {
  const found: Found[] = [];
  for (const line of lines) {
    if (!line.result || line.result.aside !== undefined) continue;
    for (const [name, output] of Object.entries(line.result.outputs))
      if (output.limits && !output.idle) {
        const verdict = leading(output.check);
        if (verdict.state !== 'no limits') found.push({ line, name, output, verdict });
      }
  }
  return found;
}

/** How a sheet stands as a whole, from its lines in their order. */
export function standingOf(
  lines: Iterable<Line>,
  units: SheetUnits,
  options: StandingOptions = {},
): Standing {
  const all = checksOf(lines);
  const by = new Map<Kind, Found[]>(ORDER.map((kind) => [kind, []]));
  for (const one of all) by.get(kindOf(one.verdict.state))!.push(one);
  const of = (kind: Kind): Found[] => by.get(kind) as Found[];
  const total = all.length;
  const proven = of('proven').length;
  if (total === 0) return { total, proven, state: 'no limits', words: NO_LIMITS };
  const counted = (list: readonly Found[], words: string): string[] =>
    list.length > 0 ? [`${list.length} ${words}`] : [];
  const asides = [
    ...counted(
      of('proven').filter(({ verdict }) => gradeOf(verdict.state) === 'near'),
      'near the edge',
    ),
    ...counted(
      of('proven').filter(({ output }) => output.check.where !== undefined),
      'where read',
    ),
  ].join(', ');
  const named = (kind: Kind, words: string): string[] => {
    const list = of(kind);
    if (list.length === 0) return [];
    const first = list.slice(0, NAMED).map((one) => namedWords(one, units, options));
    const more = list.length > NAMED ? [`${list.length - NAMED} more`] : [];
    return [`${words}: ${[...first, ...more].join('; ')}.`];
  };
  const number = (kind: Kind, words: string): string[] => {
    const list = of(kind);
    if (list.length === 0) return [];
    const near = list.filter(({ verdict }) => gradeOf(verdict.state) === 'near').length;
    return [`${words}: ${list.length}${near > 0 ? ` (${near} near the edge)` : ''}.`];
  };
  const head = proven === total ? (total === 1 ? 'the one check' : `all ${total}`) : `${proven} of ${total}`;
  const words = [
    `Proven in limits: ${head}${asides ? ` (${asides})` : ''}.`,
    ...named('out', 'Out'),
    ...named('open', 'Open'),
    ...number('calculated', 'Hold by calculation'),
    ...number('planned', 'Hold as planned'),
    ...number('settling', 'Being settled'),
    ...number('waiting', 'Waiting'),
  ].join(' ');
  const worst = of(ORDER.find((kind) => of(kind).length > 0)!);
  const { state } = (worst.find(({ verdict }) => isPartState(verdict.state)) ?? worst[0])!.verdict;
  return { total, proven, state, words };
}
