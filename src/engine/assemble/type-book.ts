import type { Problem } from '../../../shared/problem.ts';
import type { ValueType } from '../../language/syntax.ts';

type Found = ValueType | Problem;
type Infer = () => Found;

const UNKNOWN: ValueType = { kind: 'quantity' };

/**
 * Types of cells that follow from each other, each inferred once. Cells whose entries name each other in a ring are
 * settled together, all from unknown and round by round, so that it does not matter which of them is asked first
 * (Tarjan's strongly connected components).
 */
export class TypeBook {
  private readonly known = new Map<string, Found>();
  /** What the members of the ring that is being settled are taken for. */
  private guesses: ReadonlyMap<string, Found> = new Map();
  private readonly stack: { id: string; infer: Infer }[] = [];
  private readonly place = new Map<string, number>();
  /** Least place on the stack that leads back from here, of the cells being asked. */
  private readonly back: number[] = [];

  of(id: string, infer: Infer): Found {
    const known = this.known.get(id) ?? this.guesses.get(id);
    if (known) return known;
    const place = this.place.get(id);
    if (place !== undefined) {
      this.leadsTo(place);
      return UNKNOWN;
    }
    const own = this.stack.length;
    this.place.set(id, own);
    this.stack.push({ id, infer });
    this.back.push(Number.POSITIVE_INFINITY);
    const found = infer();
    const back = this.back.pop() as number;
    if (back < own) {
      this.leadsTo(back);
      return found;
    }
    const members = this.stack.splice(own);
    for (const member of members) this.place.delete(member.id);
    if (back === Number.POSITIVE_INFINITY) this.known.set(id, found);
    else this.settle(members);
    return this.known.get(id) as Found;
  }

  private leadsTo(place: number): void {
    const last = this.back.length - 1;
    if (last >= 0) this.back[last] = Math.min(this.back[last] as number, place);
  }

  private settle(members: readonly { id: string; infer: Infer }[]): void {
    const outer = this.guesses;
    let now = new Map<string, Found>(members.map(({ id }) => [id, UNKNOWN]));
    for (let round = 0; round < members.length; round++) {
      this.guesses = new Map([...outer, ...now]);
      const next = new Map(members.map(({ id, infer }) => [id, infer()]));
      const same = JSON.stringify([...next]) === JSON.stringify([...now]);
      now = next;
      if (same) break;
    }
    this.guesses = outer;
    for (const [id, found] of now) this.known.set(id, found);
  }
}
