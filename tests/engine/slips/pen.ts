import type { Draw } from './draw.ts';

/** How somebody writes readings down. */
export interface Pen {
  inch: boolean;
  /** Worth of one step of the last figure, in the unit. */
  step: number;
  places: number;
  number(value: number): string;
  write(stations: readonly (readonly string[])[]): string;
}

/** A hand of its own: places, unit once, behind every reading or left out, a nought in front or none. */
export function penOf(draw: Draw, inch: boolean): Pen {
  const places = inch ? draw.of([3, 4, 4, 4, 5]) : draw.of([2, 2, 3, 3]);
  // Read to half a step of the last figure.
  const half = draw.chance(0.15);
  const step = Number(`${half ? 5 : 1}e-${places + (half ? 1 : 0)}`);
  const shown = places + (half ? 1 : 0);
  const noNought = draw.chance(0.4);
  const trims = draw.chance(0.15);
  const unit = draw.of(inch ? [' in', '"', ' in', ''] : [' mm', 'mm', ' mm', '']);
  const isEach = unit !== '' && draw.chance(0.25);
  const apart = draw.of(['; ', ';', ' ; ']);
  return {
    inch,
    step,
    places: shown,
    number(value) {
      let text = (Math.round(value / step) * step).toFixed(shown);
      if (noNought) text = text.replace(/^0\./, '.');
      if (trims) text = text.replace(/(\.\d*?[1-9])0+$/, '$1');
      return text;
    },
    write(stations) {
      const list = stations
        .map((station) => station.map((one) => (isEach ? `${one}${unit}` : one)).join(apart))
        .join(' | ');
      return isEach ? list : `${list}${unit}`;
    },
  };
}
