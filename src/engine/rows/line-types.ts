import type { Problem } from '../../../shared/problem.ts';
import { quantityKind } from '../../../shared/quantities/quantities.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { checkExpr } from '../../language/compile/check.ts';
import { quantity } from '../../language/functions/types.ts';
import { sortOfUnit } from '../../language/syntax/sort.ts';
import type { Entry, Reference, ValueType } from '../../language/syntax/syntax.ts';
import { eachRef } from './expr.ts';
import type { Library } from './library.ts';
import type { Texts } from './texts.ts';
import { TypeBook } from './type-book.ts';
import { typeOfQuantity } from './type-of-quantity.ts';

const UNKNOWN: ValueType = { kind: 'quantity' };

/** The value that tells what an entry without a formula is of. */
const literalOf = (entry: Exclude<Entry, { kind: 'blank' | 'formula' }>) => {
  switch (entry.kind) {
    case 'range':
      return entry.low;
    case 'readings':
      return entry.stations[0]?.[0];
    case 'fit':
      return entry.nominal;
    default:
      return entry.value;
  }
};

/** What the plain lines of a sheet are: lengths, temperatures ..., by their kind of quantity or by their entries. */
export class LineTypes {
  private book = this.newBook();

  constructor(
    private readonly library: Library,
    private readonly texts: Texts,
    private readonly records: ReadonlyMap<string, CellRecord>,
    private readonly idOf: (name: string) => string | undefined,
    private readonly typeOf: (ref: Reference) => ValueType | Problem,
  ) {}

  /** After records have changed. */
  forget(): void {
    this.book = this.newBook();
  }

  /** Type of a plain line: by its kind of quantity, else by its entry. Unknown while it is blank or a ring leaves it open. */
  of(record: CellRecord): ValueType | Problem {
    return givenType(record) ?? this.book.of(record.id);
  }

  private newBook(): TypeBook {
    return new TypeBook(
      (id) => this.followsFrom(id),
      (id) => {
        const record = this.records.get(id);
        return record && record.role !== 'cell' ? this.infer(record) : UNKNOWN;
      },
    );
  }

  /** Lines whose types decide that of a line: those its formula names, or those the inputs of a library cell stand for. */
  private followsFrom(id: string): string[] {
    const record = this.records.get(id);
    if (!record || givenType(record)) return [];
    const names = new Set<string>();
    if (record.role === 'cell') {
      for (const text of Object.values(record.inputs ?? {}))
        names.add(text.trim().replace(/^=\s*/, '').split('.')[0] ?? '');
    } else {
      const { entry } = this.texts.entry(record.entry ?? '', undefined, record.role);
      if (entry.kind === 'formula') eachRef(entry.expr, (ref) => names.add(ref.name));
    }
    return [...names].map((name) => this.idOf(name)).filter((found) => found !== undefined);
  }

  private infer(record: CellRecord): ValueType | Problem {
    const { entry, problems } = this.texts.entry(record.entry ?? '', undefined, record.role);
    if (problems[0]) return problems[0];
    if (entry.kind === 'blank') return UNKNOWN;
    if (entry.kind === 'formula') {
      const { type, problems: found } = checkExpr(
        entry.expr,
        { typeOf: this.typeOf },
        this.library.functions,
      );
      return found[0] ?? type;
    }
    const literal = literalOf(entry);
    return literal
      ? quantity(literal.dimension, literal.point, sortOfUnit(literal.unit, literal.dimension))
      : UNKNOWN;
  }
}

const givenType = ({ quantity: given }: CellRecord): ValueType | undefined =>
  given && quantityKind(given) ? typeOfQuantity(given) : undefined;
