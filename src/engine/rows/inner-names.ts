import type { CellKind, CellOutput } from '../../../cells/record/cell.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Expr, Reference } from '../../language/syntax/syntax.ts';
import type { CellBuilder } from './builder.ts';
import { call, constant, eachRef, fold, mapRefs, quoted, rowRef } from './expr.ts';
import { atEnd, type End } from './fit-ends.ts';
import type { InputPlan } from './inputs.ts';
import { keyOf, outputRow, partRow, type RowKey } from './key.ts';
import { namedSizes } from './proof.ts';
import type { RowProof } from './row.ts';
import type { SheetScope } from './scope.ts';

/** Names as the cell's own formulas see them. */
export class InnerNames {
  constructor(
    private readonly build: CellBuilder,
    private readonly scope: SheetScope,
    private readonly record: CellRecord,
    private readonly kind: CellKind,
    private readonly inputs: ReadonlyMap<string, InputPlan>,
  ) {}

  isBlank = (name: string): boolean | undefined => {
    const input = this.inputs.get(name);
    return input ? input.kind === 'blank' : undefined;
  };

  isInput(name: string): boolean {
    return this.inputs.has(name);
  }

  input(name: string): InputPlan | undefined {
    return this.inputs.get(name);
  }

  /** A formula of the record by its own names, blank inputs settled. */
  raw(text: string): Expr {
    return fold(this.scope.texts.formula(text), this.isBlank);
  }

  /** The same over row keys. */
  formula(text: string): Expr {
    return mapRefs(this.raw(text), (ref) => this.ref(ref));
  }

  /** Over row keys at an end that the forms of the parts allow; undefined where none of them has a form. */
  atEnd(text: string, end: End): Expr | undefined {
    return atEnd(this.raw(text), end, (ref, which) => {
      const input = this.inputs.get(ref.name);
      if (input?.kind === 'value' && input.of && ref.output === undefined) {
        const { name, output } = input.of;
        return this.scope.endOf({ ...ref, name, ...(output ? { output } : {}) }, which);
      }
      const own = partRow(outputRow(this.build.cell.id, ref.name), which);
      if (!input && this.build.has(own)) return { to: rowRef(own), isEnd: true };
      return { to: this.ref(ref), isEnd: false };
    });
  }

  /** How an output follows from what its formula takes in. */
  proofOf(expr: Expr, { basis, held }: CellOutput): RowProof {
    // What the cell decides (the next undersize, so many shims) is done only once it is measured.
    if (held) return { is: 'planned' };
    if (basis !== 'geometry') return { basis: 'model' };
    const spots = namedSizes(expr, this.scope.library.functions);
    const aside = new Set<RowKey>();
    eachRef(expr, ({ name }) => {
      if (this.equipment.has(name as RowKey)) aside.add(name as RowKey);
    });
    return {
      basis: 'geometry',
      ...(spots.length > 0 ? { spots } : {}),
      ...(aside.size > 0 ? { aside: [...aside] } : {}),
    };
  }

  /** Keys of what its formulas take of equipment, gauges and material: a gauge and a correction to reference temperature stop no proof. */
  private readonly equipment = new Set<RowKey>();

  private ref(ref: Reference): Expr {
    const input = this.inputs.get(ref.name);
    if (input) {
      switch (input.kind) {
        case 'choice':
          return quoted(input.text);
        case 'value':
          if (ref.output === 'doubt') return this.doubtOf(input);
          if (ref.output !== undefined && input.of) return this.behind(input.of, ref);
          if (this.kind.inputs.find((one) => one.name === ref.name)?.counts === 'aside')
            this.equipment.add(input.key);
          return rowRef(input.key);
        case 'record':
          return ref.output === undefined
            ? this.fail(`\`${ref.name}\` is a whole cell`)
            : this.beside(this.outside({ ...ref, name: input.name }));
        case 'blank':
          return rowRef(input.key);
      }
    }
    const output = this.kind.outputs.find((one) => one.name === ref.name);
    if (output) return rowRef(this.scope.standing(this.record, output.name));
    return this.fail(`the formula names \`${ref.name}\`, which this kind of cell does not have`);
  }

  private beside(expr: Expr): Expr {
    if (expr.kind === 'ref') this.equipment.add(keyOf(expr));
    return expr;
  }

  /** `bore.least` where the input bore names a cell, or a figure of one. */
  private behind(of: { name: string; output?: string }, ref: Reference): Expr {
    if (of.output === undefined) return this.outside({ ...ref, name: of.name });
    const reading = this.scope.readingOf(of.name, of.output, ref.output as string);
    return reading === undefined ? this.outside({ ...ref, ...of }) : rowRef(reading);
  }

  /** `bore.doubt`: what the reading behind an input is known to, at 95 %; nothing where none is. */
  private doubtOf({ key, of }: Extract<InputPlan, { kind: 'value' }>): Expr {
    const own = partRow(key, 'doubt');
    const found = of
      ? this.scope.doubtOf({ kind: 'ref', ...of, from: 0, to: 0 })
      : this.build.has(own)
        ? own
        : undefined;
    return found ? rowRef(found) : constant(0);
  }

  private outside(ref: Reference): Expr {
    const target = this.scope.resolve(ref);
    if ('message' in target) return this.fail(target.message);
    return rowRef(target.key);
  }

  private fail(message: string): Expr {
    return call('FAIL', quoted(`${this.build.name}: ${message}`));
  }
}
