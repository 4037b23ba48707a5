import { type Problem, problem } from '../../../shared/problem.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import type { Role, SheetUnits } from '../../../shared/sheet/format.ts';
import type { Unit } from '../../../shared/units/units.ts';
import { parseEntry, parseFormula, parseTolerance } from '../../language/parse.ts';
import { sizeOf } from '../../language/syntax/size-of.ts';
import type { Entry, Expr, ParsedEntry, Spread } from '../../language/syntax/syntax.ts';
import type { Handbook } from '../../language/values/context.ts';

/** Reads the texts of a sheet, remembering each: an edit reads only what it changed. */
export class Texts {
  /** By role, kind of quantity and unit shown, then by text. */
  private readonly entries = new Map<string, Map<string, ParsedEntry>>();
  private kept = 0;
  private readonly formulas = new Map<string, Expr | Problem>();

  constructor(
    private readonly handbook: Handbook,
    private readonly units: SheetUnits,
  ) {}

  /** `display`: the unit it is shown in, for places where a bare figure is in doubt for it. */
  entry(text: string, quantity: string | undefined, role: Role, display?: string): ParsedEntry {
    const place = `${role} ${quantity ?? ''} ${display ?? ''}`;
    let texts = this.entries.get(place);
    if (!texts) {
      texts = new Map();
      this.entries.set(place, texts);
    }
    const known = texts.get(text);
    if (known) return known;
    if (this.kept++ > 20_000) {
      for (const each of this.entries.values()) each.clear();
      this.kept = 1;
    }
    const read = parseEntry(text, {
      ...(quantity ? { quantity } : {}),
      ...(display ? { display } : {}),
      units: this.units,
      handbook: this.handbook,
      role,
    });
    texts.set(text, read);
    return read;
  }

  tolerance(
    text: string,
    quantity: string | undefined,
    nominal: number | undefined,
    sizeUnit?: string,
  ): { spread?: Spread; designation?: string; problems: Problem[] } {
    return parseTolerance(text, {
      ...(quantity ? { quantity } : {}),
      units: this.units,
      handbook: this.handbook,
      role: 'chosen',
      ...(nominal === undefined ? {} : { nominal }),
      ...(sizeUnit === undefined ? {} : { sizeUnit }),
    });
  }

  /** The unit that a quantity is shown in. */
  unitOf(quantity: string | undefined, display?: string): Unit {
    return displayUnit(quantity, this.units, display);
  }

  /** A formula of the library (with its `=`): the language of its own records, so a mistake there is a programmer's. */
  formula(text: string): Expr {
    let known = this.formulas.get(text);
    if (!known) {
      const { expr, problems } = parseFormula(text);
      known = expr ?? problems[0] ?? problem('syntax', `cannot read the formula ${text}`);
      this.formulas.set(text, known);
    }
    if ('message' in known) throw new LibraryFormulaError(text, known.message);
    return known;
  }
}

/** A formula in a record of `cells/kinds` that cannot be read. */
class LibraryFormulaError extends Error {
  override name = 'LibraryFormulaError';
  constructor(formula: string, reason: string) {
    super(`${formula}: ${reason}`);
  }
}

/** The number an entry stands for where it is one number, whatever it was written as. */
export const numberOf = (entry: Entry): number | undefined => sizeOf(entry)?.value;
