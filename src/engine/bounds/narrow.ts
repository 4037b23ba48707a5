import { type Bound, FAULTS, Port } from '../../language/bounds/bound.ts';
import { addDown, addUp } from '../../language/bounds/directed.ts';
import type { Enclosure } from '../../language/bounds/enclose.ts';

/**
 * Runs a formula forward over the box, with a second look at parts of it that reach where the operation above has no
 * value: as a row is, they are narrowed by their value in the middle and their slopes.
 *
 * @param load loads the ports with the middle, or with the box
 * @param reach how far below and above its value in the middle a part can be, by the slopes that stand at the ports
 */
export function forwardOver(
  { root, ports, doubt }: Enclosure,
  load: (isMiddle: boolean) => void,
  reach: () => readonly [down: number, up: number],
): void {
  load(false);
  let isBusy = false;
  doubt.narrow = (part: Bound): void => {
    if (isBusy || part instanceof Port) return;
    isBusy = true;
    load(true);
    part.forward();
    const { lo, hi, flags } = part;
    load(false);
    part.forward();
    if ((flags & FAULTS) === 0) {
      for (const port of ports) port.dlo = port.dhi = 0;
      part.back(1, 1);
      const [down, up] = reach();
      const [below, above] = [addDown(lo, down), addUp(hi, up)];
      if (below > part.lo && below <= part.hi) part.lo = below;
      if (above < part.hi && above >= part.lo) part.hi = above;
    }
    isBusy = false;
  };
  root.forward();
  doubt.narrow = undefined;
}
