import type { CellInput } from '../../../cells/record/cell.ts';
import { type Problem, problem } from '../../../shared/problem.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { type Library, notFetched } from './library.ts';

/** What choices are followed through: the library, and the lines of the sheet by name. */
export interface ChoiceFrom {
  library: Pick<Library, 'kinds' | 'tables' | 'lacks'>;
  named: (name: string) => CellRecord | undefined;
  /** A row of a table that the entry of a plain line names, such as a thread: which table, and its key. */
  designated?: (record: CellRecord) => { table: string; text: string } | undefined;
  /** Lines that can be offered where a name leads to none. */
  all?: () => Iterable<CellRecord>;
}

/** A choice as it stands, and the lines it was named through, the nearest first. */
export type Choice = { through: readonly CellRecord[] } & (
  | { text: string }
  /** Nothing is chosen yet: in which line, and of what. */
  | { blank: { record: CellRecord; input: CellInput } }
  /** And the line in which it is wrong. */
  | { problem: Problem; at: CellRecord }
);

const NAMED = /^(=?)\s*([\p{L}_][\p{L}\p{M}\p{N}_]*)(?:\s*\.\s*([\p{L}_][\p{L}\p{M}\p{N}_]*))?$/u;

interface Place {
  name: string;
  output?: string | undefined;
}

/** `= next.thread`, and `next.thread` where there is such a line: the line a choice is taken from. */
function placeIn(text: string, named: ChoiceFrom['named']): Place | undefined {
  const [, sign, name, output] = NAMED.exec(text) ?? [];
  if (name === undefined) return undefined;
  return sign === '=' || (output !== undefined && named(name)) ? { name, output } : undefined;
}

/** Whether a choice is taken from another line. */
const isTaken = (text: string, named: ChoiceFrom['named']): boolean =>
  text.startsWith('=') || placeIn(text, named) !== undefined;

/** Name of the line a choice is taken from. */
export const nameTaken = (text: string, named: ChoiceFrom['named']): string | undefined =>
  placeIn(text.trim(), named)?.name;

const written = ({ name, output }: Place): string => (output === undefined ? name : `${name}.${output}`);

/** Every choice from one table that a line of the sheet makes, as another line can name it. */
export const choicesOf = (
  table: string,
  { library, all, designated }: ChoiceFrom,
  but?: string,
): { record: CellRecord; input?: CellInput; entry: string }[] =>
  [...(all?.() ?? [])].flatMap((record) => {
    if (!record.name || record.id === but) return [];
    if (record.role !== 'cell')
      return designated?.(record)?.table === table ? [{ record, entry: `= ${record.name}` }] : [];
    return (library.kinds.get(record.kind ?? '')?.inputs ?? [])
      .filter(({ choice }) => choice === table)
      .map((input) => ({ record, input, entry: `= ${record.name}.${input.name}` }));
  });

/** What a choice input stands for: its own text or default, or what the line it names stands for. */
export function choiceOf(record: CellRecord, input: CellInput, from: ChoiceFrom): Choice {
  const through: CellRecord[] = [];
  const table = input.choice as string;
  let at = record;
  let now = input;
  const wrong = (kind: Problem['kind'], message: string): Choice => {
    const offers = choicesOf(table, from, record.id).map((one) => ({
      label: one.record.label ?? (one.record.name as string),
      entry: one.entry,
    }));
    const title = from.library.tables.get(table)?.title;
    const wanted = ` ${input.label} wants a choice of its own kind${title ? ` (${title})` : ''}${offers.length > 0 ? ', such as ' : ''}${offers
      .slice(0, 3)
      .map(({ entry }) => entry)
      .join(' or ')}.`;
    return {
      through,
      at,
      problem: problem(kind, message + wanted, offers.length > 0 ? { choices: offers.slice(0, 6) } : {}),
    };
  };
  const seen = new Set<string>();
  for (;;) {
    const text = at.inputs?.[now.name]?.trim() || now.default || '';
    if (text === '') return { through, blank: { record: at, input: now } };
    if (!isTaken(text, from.named)) return { through, text };
    seen.add(`${at.id} ${now.name}`);
    const place = placeIn(text, from.named);
    if (!place) return wrong('syntax', `${text} works something out, and a choice is only taken as it is.`);
    const target = from.named(place.name);
    if (!target) return wrong('unknown-name', `There is no cell named \`${place.name}\`.`);
    through.push(target);
    if (target.role !== 'cell') {
      const row = place.output === undefined ? from.designated?.(target) : undefined;
      return row?.table === table
        ? { through, text: row.text }
        : wrong('dimension', `\`${written(place)}\` is a figure and no choice.`);
    }
    const kind = from.library.kinds.get(target.kind ?? '');
    if (!kind) {
      const away = target.kind !== undefined && from.library.lacks?.(target.kind);
      return away
        ? { through, at: target, problem: problem('unknown-key', notFetched(target.kind as string)) }
        : wrong('unknown-key', `\`${place.name}\` is of a kind this library does not have.`);
    }
    const made = kind.inputs.filter(({ choice }) => choice !== undefined);
    const fits = made.filter(({ choice }) => choice === table);
    const { output } = place;
    const found =
      output === undefined
        ? fits.length === 1
          ? fits[0]
          : undefined
        : made.find((one) => one.name === output);
    if (!found) {
      const isFigure =
        kind.outputs.some((one) => one.name === output) || kind.inputs.some((one) => one.name === output);
      if (output === undefined && fits.length > 1)
        return wrong('unknown-name', `\`${place.name}\` makes more than one such choice: say which.`);
      return isFigure
        ? wrong('dimension', `\`${written(place)}\` is a figure and no choice.`)
        : wrong(
            'unknown-name',
            `\`${place.name}\` (${kind.title}) makes no ${output === undefined ? 'such choice' : `choice \`${output}\``}.`,
          );
    }
    if (found.choice !== table)
      return wrong('dimension', `\`${written(place)}\` is another kind of choice: ${found.label}.`);
    if (seen.has(`${target.id} ${found.name}`))
      return wrong('ring', `\`${written({ name: place.name, output: found.name })}\` is named in a ring.`);
    at = target;
    now = found;
  }
}

/** The text it stands for; undefined while there is none. */
export const choiceText = (record: CellRecord, input: CellInput, from: ChoiceFrom): string | undefined => {
  const found = choiceOf(record, input, from);
  return 'text' in found ? found.text : undefined;
};
