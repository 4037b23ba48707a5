/** Whether everything that counts holds at a step. */
export type Probe = (step: number) => boolean;

/** Probes one end may cost. */
const MOST = 48;

/**
 * The last step from one that holds at which all still does, going one way: from a guess outward while it holds, inward
 * while it does not, by halves in between. `beyond` is where nothing is looked for any more; that step itself counts.
 *
 * @param inside a step that holds
 * @returns the last step that holds, and the first found beyond it that does not; none where `beyond` was reached
 */
export function settleEnd(
  holds: Probe,
  inside: number,
  guess: number,
  beyond: number,
): { last: number; next?: number } {
  const way = beyond >= inside ? 1 : -1;
  const isPast = (step: number): boolean => (step - beyond) * way >= 0;
  let good = inside;
  let bad: number | undefined;
  let probes = 0;
  const probe = (step: number): boolean => {
    probes++;
    const found = holds(step);
    if (found) good = step;
    else bad = step;
    return found;
  };
  const start = (guess - inside) * way > 0 ? guess : inside;
  if (start !== inside) probe(start);
  // Outward in strides that grow, as long as it holds.
  for (let stride = 1; bad === undefined && !isPast(good) && probes < MOST; stride *= 2) {
    const step = good + way * stride;
    probe(isPast(step) ? beyond : step);
  }
  // Inward from the guess likewise: it lies near, more often than not.
  for (let stride = 1; bad !== undefined && good === inside && (bad - inside) * way > 2 * stride; stride *= 2)
    if (probes >= MOST || probe(bad - way * stride)) break;
  while (bad !== undefined && (bad - good) * way > 1 && probes < MOST)
    probe(good + way * Math.floor(((bad - good) * way) / 2));
  return bad === undefined ? { last: good } : { last: good, next: bad };
}
