import type { Slip } from '../rows/results.ts';
import type { Datum } from './datum.ts';

/** What is asked of one text. */
export interface Held {
  slips: Slip[];
  /** The line that it does not go with, which may be the wrong one as well, and by how much this is the odder. */
  beside?: { other: Datum; lead: number; isFirst: boolean };
}

export const NOTHING: Held = { slips: [] };
/** Odds nearer than this, as logarithms, are the same but for rounding. */
const SAME = 1e-9;

/** What is asked of each text, and which go together. */
interface Asking {
  heldOnce(datum: Datum): Held;
  boundTo(datum: Datum): Datum[];
  isAnswered(datum: Datum, slip: Slip): boolean;
}

/**
 * True where it is asked about at another line. Two that do not go together are one question: at the odder of the two, or
 * at the one that goes with yet another as little. It names the other; where it has been answered, the other is asked about.
 */
export function isAskedBeside(datum: Datum, asking: Asking): boolean {
  const { beside } = asking.heldOnce(datum);
  if (!beside) return false;
  const { other } = beside;
  const { slips, beside: back } = asking.heldOnce(other);
  const theirs = slips.find(({ key }) => !key.includes('#'));
  if (!theirs || asking.isAnswered(other, theirs)) return false;
  const [mine, their] = [isShownByMore(datum, other, asking), isShownByMore(other, datum, asking)];
  if (back?.other !== datum) return !back || their;
  if (mine !== their) return their;
  const lead = beside.lead - back.lead;
  return Math.abs(lead) > SAME ? lead < 0 : !beside.isFirst;
}

/** Another line besides `but` points to it too. */
const isShownByMore = (datum: Datum, but: Datum, { boundTo, heldOnce }: Asking): boolean =>
  boundTo(datum).some((one) => one !== but && one !== datum && heldOnce(one).beside?.other === datum);
