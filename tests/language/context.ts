import { handbook } from '../../cells/handbook.ts';
import type { SheetUnits } from '../../shared/sheet/format.ts';
import { parseEntry } from '../../src/language/parse.ts';
import type { Expr, ParsedEntry } from '../../src/language/syntax/syntax.ts';
import type { EntryContext } from '../../src/language/values/context.ts';

/** Where an entry of a test stands: a length on an inch sheet unless said otherwise. */
export const at = (
  quantity: string | undefined = 'length',
  units: SheetUnits = { length: 'in' },
  more: Partial<EntryContext> = {},
): EntryContext => ({ ...(quantity ? { quantity } : {}), units, handbook, ...more });

export const anywhere: EntryContext = { units: { length: 'in' }, handbook };

/** SI value an entry stands for; the problem's message where there is one. */
const siOf = ({ entry, problems }: ParsedEntry): number | string => {
  if (problems[0]) return problems[0].message;
  if ('value' in entry) return entry.value.value;
  throw new Error(`${entry.kind} has no one value`);
};

export const read = (text: string, context: EntryContext = at()): number | string =>
  siOf(parseEntry(text, context));

export const exprOf = (text: string): Expr => {
  const { entry, problems } = parseEntry(text, at());
  if (entry.kind !== 'formula') throw new Error(`${text}: ${problems[0]?.message ?? entry.kind}`);
  return entry.expr;
};
