import type { CellInput } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Library } from './library.ts';

/** What lines are followed through: the kinds of the library, and the lines of the sheet by name. */
interface TakenFrom {
  library: Pick<Library, 'kinds' | 'lacks'>;
  named: (name: string) => CellRecord | undefined;
}

/** A line that an input names, its steel or its gauge, and the lines it was named through, the nearest first. */
type Taken = { through: readonly CellRecord[] } & (
  | { record: CellRecord }
  /** Nothing is named yet: in which line, and for what. */
  | { blank: { record: CellRecord; input: CellInput } }
  /** As the beginning of a sentence, and the line in which it is wrong; undefined for the one that asks. */
  | { fault: string; at?: CellRecord }
);

const NAMED = /^=?\s*([\p{L}_][\p{L}\p{M}\p{N}_]*)(?:\s*\.\s*([\p{L}_][\p{L}\p{M}\p{N}_]*))?$/u;

/** `steel`, or `= press.ring_material`: the line of that kind that a line names, or that another line names for itself. */
export function recordTaken(text: string, kind: string, { library, named }: TakenFrom): Taken {
  const through: CellRecord[] = [];
  let now = text.trim();
  let at: CellRecord | undefined;
  const seen = new Set<string>();
  const wrong = (fault: string): Taken => ({ through, fault, ...(at ? { at } : {}) });
  for (;;) {
    const [, name, part] = NAMED.exec(now) ?? [];
    const target = name === undefined ? undefined : named(name);
    if (!target) return wrong(`There is no cell named \`${name ?? now.replace(/^=\s*/, '')}\``);
    through.push(target);
    if (part === undefined)
      return target.kind === kind && target.role === 'cell'
        ? { through, record: target }
        : wrong(`\`${name}\` is not a ${kind} cell`);
    const input = library.kinds.get(target.kind ?? '')?.inputs.find((one) => one.name === part);
    if (input?.record !== kind)
      return wrong(
        target.kind !== undefined && library.lacks?.(target.kind)
          ? `\`${name}\` waits for its kind (${target.kind}), which could not be fetched`
          : `\`${name}\` names no ${kind} cell as \`${part}\``,
      );
    if (seen.has(`${target.id} ${part}`)) return wrong(`\`${name}.${part}\` is named in a ring`);
    seen.add(`${target.id} ${part}`);
    now = target.inputs?.[part]?.trim() ?? '';
    if (now === '') return { through, blank: { record: target, input } };
    at = target;
  }
}

/** Every line that names one of a kind for itself, as another line can take it: `= press.ring_material`. */
export const recordsNamed = (
  kind: string,
  kinds: Library['kinds'],
  records: Iterable<CellRecord>,
  but?: string,
): { record: CellRecord; input: CellInput; entry: string }[] =>
  [...records].flatMap((record) =>
    !record.name || record.id === but || record.role !== 'cell'
      ? []
      : (kinds.get(record.kind ?? '')?.inputs ?? [])
          .filter((input) => input.record === kind)
          .map((input) => ({ record, input, entry: `= ${record.name}.${input.name}` })),
  );
