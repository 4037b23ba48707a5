import { DetailedCellError, type ExportedChange, HyperFormula } from 'hyperformula';
import type { EngineFunction } from './functions.ts';
import { PREFIX, registerFunctions } from './plugin.ts';

/** An error value in a grid cell: the row where it began, and what was said there. */
export interface GridError {
  root: number | undefined;
  message: string;
}

export type GridValue = number | boolean | GridError;
export type Content = string | number | null;

/** Column with everything at nominal; the next is free. */
export const NOMINAL = 0;
/** First column of the pair with number `slot`: its low end, or the low corner; the next is the high one. */
export const lowColumn = (slot: number): number => 2 + 2 * slot;
export const highColumn = (slot: number): number => 3 + 2 * slot;

/** Reports the problem of its own row; the text never enters the grid. */
export const PROBLEM_CALL = `=${PREFIX}PROBLEM()`;
export const PROBLEM_MESSAGE = 'problem';
export const DIVISION = 'division by zero';
/** HyperFormula's words for a result beyond a double; the one error it hands on without the cell where it began. */
export const OVERFLOW = 'NaN or infinite value encountered.';

/** After so many formula writes the engine is made anew, because its parser's cache is never emptied. */
const REBUILD_AFTER = 40_000;

/**
 * The one place that touches HyperFormula: a column of nominals, with a mirror of its values so that reading costs
 * nothing; the cases are worked out beside it. Writes are gathered and carried out together by {@link Grid.settle}.
 */
export class Grid {
  private engine: HyperFormula;
  /** What stands in each row, and what it comes to. */
  private readonly contents: Content[] = [];
  private readonly mirror: (GridValue | undefined)[] = [];
  private pending: { row: number; content: Content }[] = [];
  private formulasWritten = 0;
  /** Where the values of the cases are found. */
  caseOf: (row: number, column: number) => GridValue | undefined = () => undefined;

  constructor(functions: readonly EngineFunction[]) {
    registerFunctions([
      ...functions,
      { name: 'PROBLEM', args: { min: 0, max: 0 }, compute: () => ({ message: PROBLEM_MESSAGE }) },
    ]);
    this.engine = this.build();
  }

  private build(): HyperFormula {
    const engine = HyperFormula.buildEmpty({
      licenseKey: 'gpl-v3',
      smartRounding: false,
      undoLimit: 0,
      caseSensitive: true,
      useWildcards: false,
      useStats: false,
      dateFormats: [],
      timeFormats: [],
    });
    engine.addSheet('S');
    return engine;
  }

  write(row: number, content: Content): void {
    this.pending.push({ row, content });
  }

  /** Carries out the writes gathered, recomputes, and gives the rows in which any case changed. */
  settle(): Set<number> {
    const touched = new Set<number>();
    if (this.pending.length === 0) return touched;
    if (this.formulasWritten > REBUILD_AFTER) this.renew();
    const writes = this.pending;
    this.pending = [];
    const alone = writes.length === 1;
    if (!alone) this.engine.suspendEvaluation();
    for (const { row, content } of writes) {
      this.contents[row] = content;
      if (content === null) this.mirror[row] = undefined;
      touched.add(row);
      const changes = this.put(row, content);
      if (alone) this.take(changes, touched);
    }
    if (!alone) this.take(this.engine.resumeEvaluation(), touched);
    return touched;
  }

  private put(row: number, content: Content): ExportedChange[] {
    if (typeof content === 'string') this.formulasWritten++;
    return this.engine.setCellContents({ sheet: 0, row, col: NOMINAL }, content);
  }

  private take(changes: readonly ExportedChange[], touched: Set<number>): void {
    for (const change of changes) {
      if (!('address' in change)) continue;
      const { row } = change.address;
      touched.add(row);
      this.mirror[row] = this.read(change.newValue);
    }
  }

  private read(value: unknown): GridValue | undefined {
    if (typeof value === 'number' || typeof value === 'boolean') return value;
    if (value instanceof DetailedCellError) {
      const digits = value.address?.match(/(\d+)$/);
      return {
        root: digits ? Number(digits[1]) - 1 : undefined,
        message: value.type === 'DIV_BY_ZERO' ? DIVISION : (value.message ?? ''),
      };
    }
    return undefined;
  }

  private renew(): void {
    this.engine.destroy();
    this.engine = this.build();
    this.formulasWritten = 0;
    this.engine.suspendEvaluation();
    this.contents.forEach((content, row) => {
      if (content !== null) this.put(row, content);
    });
    this.take(this.engine.resumeEvaluation(), new Set());
  }

  /** Value of a row at nominal, or in a case, where it has one of its own there. */
  value(row: number, column: number): GridValue | undefined {
    return column === NOMINAL ? this.mirror[row] : this.caseOf(row, column);
  }

  /** Value of a row at nominal. */
  nominal(row: number): GridValue | undefined {
    return this.mirror[row];
  }

  destroy(): void {
    this.engine.destroy();
  }
}
