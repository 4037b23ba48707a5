import type { Problem } from '../../../shared/problem.ts';
import type { ValueType } from '../../language/syntax/syntax.ts';

type Found = ValueType | Problem;

const UNKNOWN: ValueType = { kind: 'quantity' };

/** A cell on the way down to what its type follows from. */
interface Visit {
  id: string;
  waitsFor: string[];
  next: number;
  /** Place on the way, and the least place that leads back from here. */
  place: number;
  back: number;
}

/**
 * Types of cells that follow from each other, each inferred once and after those it follows from, however long the chain.
 * Cells whose entries name each other in a ring are settled together, all from unknown and round by round, so that it does
 * not matter which of them is asked first (Tarjan's strongly connected components).
 */
export class TypeBook {
  private readonly known = new Map<string, Found>();
  /** What the members of the ring that is being settled are taken for. */
  private guesses: ReadonlyMap<string, Found> = new Map();
  private readonly asking = new Set<string>();

  constructor(
    /** Cells that the type of one follows from. */
    private readonly waitsFor: (id: string) => string[],
    private readonly infer: (id: string) => Found,
  ) {}

  of(id: string): Found {
    const known = this.known.get(id) ?? this.guesses.get(id);
    if (known) return known;
    if (this.asking.has(id)) return UNKNOWN;
    this.asking.add(id);
    this.visit(id);
    this.asking.delete(id);
    return this.known.get(id) ?? UNKNOWN;
  }

  private visit(first: string): void {
    const way: Visit[] = [];
    const open: Visit[] = [];
    const byId = new Map<string, Visit>();
    const enter = (id: string): void => {
      const place = byId.size;
      const visit = { id, waitsFor: this.waitsFor(id), next: 0, place, back: place };
      byId.set(id, visit);
      way.push(visit);
      open.push(visit);
    };
    enter(first);
    for (let at = way.at(-1); at; at = way.at(-1)) {
      const other = at.waitsFor[at.next++];
      if (other !== undefined) {
        const met = byId.get(other);
        if (met && !this.known.has(other)) at.back = Math.min(at.back, met.back);
        else if (!met && !this.known.has(other) && !this.guesses.has(other)) enter(other);
        continue;
      }
      way.pop();
      const above = way.at(-1);
      if (above) above.back = Math.min(above.back, at.back);
      if (at.back < at.place) continue;
      const members = open.splice(open.indexOf(at)).map(({ id }) => id);
      if (members.length === 1 && !at.waitsFor.includes(at.id)) this.known.set(at.id, this.infer(at.id));
      else this.settle(members);
    }
  }

  private settle(members: readonly string[]): void {
    const outer = this.guesses;
    let now = new Map<string, Found>(members.map((id) => [id, UNKNOWN]));
    // What is known spreads at least one cell a round; rings much longer than this are nobody's sheet.
    for (let round = 0; round < Math.min(members.length, 50); round++) {
      this.guesses = new Map([...outer, ...now]);
      const next = new Map(members.map((id) => [id, this.infer(id)]));
      const same = JSON.stringify([...next]) === JSON.stringify([...now]);
      now = next;
      if (same) break;
    }
    this.guesses = outer;
    for (const [id, found] of now) this.known.set(id, found);
  }
}
