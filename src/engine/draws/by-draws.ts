import type { DecisionRule } from '../../../shared/sheet/format.ts';
import { Enclosures } from '../network/enclosures.ts';
import type { EngineFunction } from '../network/functions.ts';
import type { Grid } from '../network/grid.ts';
import type { Row } from '../network/layout.ts';
import type { Network } from '../network/network.ts';
import type { Drawn } from '../rows/results.ts';
import { BLOCK, type Compiled, Cone } from './cone.ts';
import { LOOKS } from './looks.ts';
import { Screen } from './screen.ts';
import { GROUP } from './stream.ts';
import { type Asked, isClear, type Side, Tally, UNDRAWN } from './tally.ts';

/** The same sheet has the same draws everywhere. */
const SEED = 101;

interface Line {
  asked: Asked;
  drawn: Drawn;
}

/** Draws under way: the lines that are not settled, all over one cone. */
interface Run {
  cone: Cone;
  tallies: Map<Row, Tally>;
  done: number;
}

/**
 * Verdicts by draws (JCGM 101, JCGM 106) of the judged rows for which linear propagation is not good enough. A line keeps
 * what was drawn for as long as nothing upstream of it moves.
 */
export class ByDraws {
  private readonly lines = new Map<Row, Line>();
  private readonly closures: Compiled = new WeakMap();
  private readonly enclosures: Enclosures;
  private screen: Screen;
  private run: Run | undefined;

  constructor(
    private readonly network: Network,
    private readonly grid: Grid,
    private readonly functions: ReadonlyMap<string, EngineFunction>,
  ) {
    this.enclosures = new Enclosures(functions);
    this.screen = this.newScreen();
  }

  private newScreen(): Screen {
    return new Screen(this.grid, this.enclosures);
  }

  /** Forgets what was drawn of rows downstream of those that moved. Gives the owners of lines that have to be judged anew. */
  forget(touched: Iterable<number>): Set<string> {
    this.screen = this.newScreen();
    this.run = undefined;
    const owners = new Set<string>();
    if (this.lines.size === 0) return owners;
    const reached = new Set<Row>();
    for (const slot of touched) {
      const row = this.network.rowAt(slot);
      if (row) reached.add(row);
    }
    for (const row of reached) for (const user of row.usedBy) reached.add(user);
    for (const [row, { asked }] of this.lines) {
      const isGone = this.network.rows.get(row.key) !== row;
      const isMoved = reached.has(row) || Object.values(asked.margins).some((margin) => reached.has(margin));
      if (!isGone && !isMoved) continue;
      this.lines.delete(row);
      if (!isGone) owners.add(row.owner);
    }
    return owners;
  }

  /** What draws tell of a judged row; undefined where linear propagation is good enough. */
  drawnOf(asked: Asked): Drawn | undefined {
    if (asked.rule !== 'iso14253-2013' && asked.rule !== 'iso14253-2017') return undefined;
    const known = this.lines.get(asked.row);
    if (known && isSame(known.asked, asked)) return known.drawn;
    const rows = [asked.row, ...Object.values(asked.margins)];
    if (!asked.isEdge && rows.every((row) => this.screen.isStraight(row))) {
      this.lines.delete(asked.row);
      return undefined;
    }
    this.lines.set(asked.row, { asked, drawn: UNDRAWN });
    this.run = undefined;
    return UNDRAWN;
  }

  /** How many times as wide as linear propagation has it a margin may be where its verdict turns. */
  mostWide(margin: Row, rule: DecisionRule): number {
    return this.screen.mostWide(margin, rule);
  }

  /** True while some verdict waits for draws. */
  get isSettling(): boolean {
    for (const { drawn } of this.lines.values()) if (!drawn.isLast) return true;
    return false;
  }

  /** Draws on by one block, or to the next look where it is told to. Gives the owners of lines that were looked at. */
  step(toLook: boolean): Set<string> {
    const owners = new Set<string>();
    this.run ??= this.begin();
    const { run } = this;
    const next = LOOKS.find((look) => look > run.done);
    if (next === undefined) return owners;
    do {
      const n = Math.min(BLOCK, next - run.done);
      run.cone.draw(run.done / GROUP, n);
      for (const tally of run.tallies.values()) tally.take(run.cone, n);
      run.done += n;
    } while (toLook && run.done < next);
    if (run.done < next) return owners;
    for (const [row, tally] of run.tallies) {
      const line = this.lines.get(row);
      if (!line) continue;
      const drawn = tally.look(run.done === LOOKS[LOOKS.length - 1]);
      const sides = Object.keys(line.asked.margins) as Side[];
      if (isClear(drawn, line.asked.rule, sides)) drawn.isLast = true;
      line.drawn = drawn;
      owners.add(row.owner);
      if (drawn.isLast) run.tallies.delete(row);
    }
    if (run.tallies.size > 0) run.cone = this.coneOf([...run.tallies.values()].map(({ asked }) => asked));
    return owners;
  }

  private begin(): Run {
    const open = [...this.lines.values()].filter(({ drawn }) => !drawn.isLast);
    const tallies = new Map<Row, Tally>();
    for (const { asked } of open) {
      const value = this.grid.nominal(asked.row.slot);
      const nominal = typeof value === 'number' ? value : Number.NaN;
      tallies.set(asked.row, new Tally(asked, nominal, asked.scale * 1e-12));
    }
    return { cone: this.coneOf(open.map(({ asked }) => asked)), tallies, done: 0 };
  }

  private coneOf(asked: readonly Asked[]): Cone {
    const rows = asked.flatMap(({ row, margins }) => [row, ...Object.values(margins)]);
    return new Cone(rows, this.grid, this.functions, this.closures, SEED);
  }
}

const isSame = (a: Asked, b: Asked): boolean =>
  a.rule === b.rule &&
  a.margins.lower === b.margins.lower &&
  a.margins.upper === b.margins.upper &&
  a.margins.wear === b.margins.wear;
