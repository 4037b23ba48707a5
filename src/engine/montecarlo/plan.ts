import type { Problem } from '../../../shared/problem.ts';
import type { Expr } from '../../language/syntax/syntax.ts';
import type { Computed } from '../computed.ts';
import type { DrawnSource } from '../draws/distributions.ts';
import { highColumn, lowColumn, NOMINAL } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { OutputPlan } from '../rows/assembled.ts';
import type { RowKey } from '../rows/key.ts';
import type { Figure } from '../rows/results.ts';

/** One row as it is simulated; references in the formula are row keys. */
type SimulatedRow = { key: RowKey } & (
  | { kind: 'source'; source: DrawnSource }
  | { kind: 'formula'; expr: Expr }
  | { kind: 'constant'; value: number }
);

/** An output that is wanted, with the rows of its margins. */
export interface WantedOutput {
  cell: string;
  output: string;
  key: RowKey;
  figure: Figure;
  lowerMargin?: RowKey;
  upperMargin?: RowKey;
  wearMargin?: RowKey;
}

/** A computed sheet as plain data for drawing: rows in an order in which each comes after those it uses. */
export interface SimulationPlan {
  rows: SimulatedRow[];
  outputs: WantedOutput[];
  without: { cell: string; output: string; problem?: Problem }[];
}

/** Rows, sources and outputs of a sheet as it stands. */
export function planOf(computed: Computed): SimulationPlan {
  const outputs: WantedOutput[] = [];
  const without: SimulationPlan['without'] = [];
  for (const cell of computed.cells.values())
    for (const plan of cell.outputs) {
      const key = plan.measured ?? plan.planned;
      const figure = key === undefined ? undefined : computed.figure(key);
      if (key !== undefined && figure)
        outputs.push({ cell: cell.id, output: plan.name, key, figure, ...marginsOf(plan, computed) });
      else without.push({ cell: cell.id, output: plan.name });
    }
  const keys = outputs.flatMap(({ key, lowerMargin, upperMargin, wearMargin }) =>
    [key, lowerMargin, upperMargin, wearMargin].filter((one) => one !== undefined),
  );
  const rows = upstream(keys.map((key) => computed.network.rows.get(key)).filter((row) => row !== undefined));
  return { rows: rows.map((row) => simulated(row, computed)), outputs, without };
}

function marginsOf(plan: OutputPlan, computed: Computed): Partial<WantedOutput> {
  const limits = plan.limits;
  if (!limits) return {};
  const known = (key: RowKey | undefined): boolean => key !== undefined && computed.figure(key) !== undefined;
  const wear = plan.justMade ? undefined : computed.wearMargin(plan);
  return {
    ...(known(limits.lowerMargin) ? { lowerMargin: limits.lowerMargin as RowKey } : {}),
    ...(known(limits.upperMargin) ? { upperMargin: limits.upperMargin as RowKey } : {}),
    ...(wear !== undefined && known(wear) ? { wearMargin: wear } : {}),
  };
}

/** The rows and all they depend on, each after those it uses. */
function upstream(rows: readonly Row[]): Row[] {
  const all = new Set<Row>(rows);
  for (const row of all) for (const used of row.uses) all.add(used);
  return [...all].sort((a, b) => a.place - b.place);
}

function simulated(row: Row, { grid }: Computed): SimulatedRow {
  const { key } = row;
  const body = row.definition.body;
  const at = (column: number): number => {
    const value = grid.value(row.slot, column);
    return typeof value === 'object' || value === undefined ? Number.NaN : Number(value);
  };
  if (body.kind === 'source' && row.source !== undefined) {
    const { distribution, k, dof } = body.ends;
    const [low, high] = [at(lowColumn(row.source)), at(highColumn(row.source))];
    return { key, kind: 'source', source: { nominal: at(NOMINAL), low, high, distribution, k, dof } };
  }
  if (body.kind === 'formula' && row.cases) return { key, kind: 'formula', expr: body.expr };
  return { key, kind: 'constant', value: at(NOMINAL) };
}
