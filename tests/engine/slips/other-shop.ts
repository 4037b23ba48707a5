import type { Habits } from './clean-sheet.ts';
import type { Draw } from './draw.ts';

/** A heavy tail on both sides: most readings are good, some are not. */
const laplace = (draw: Draw): number => draw.wait() * (draw.chance(0.5) ? 1 : -1);

/**
 * Another shop than the one the questions were first tried on: sizes from a feed screw to a water wheel's shaft, readings
 * that scatter three times as much and now and then by far more, bell-mouthed and three-lobed surfaces, wear by the size,
 * longer lists, cuts that miss by more.
 */
export const OTHER_SHOP: Habits = {
  nominal: (draw) => (draw.chance(0.4) ? draw.whole(6, 60) : 6 * 40 ** draw.next()),
  wear: (draw) => 0.003 * 200 ** draw.next(),
  share: (draw) => draw.between(0, 2),
  table: (draw) => [draw.whole(1, 5), draw.of([1, 2, 3, 3])],
  form: (draw, along, around) => {
    const [bell, lobe, turn] = [draw.between(0, 0.6), draw.between(0, 0.4), draw.between(0, 2 * Math.PI)];
    return (i, j) =>
      bell * ((2 * (i + 0.5)) / along - 1) ** 2 +
      (lobe / 2) * Math.cos(turn + (2 * Math.PI * j) / (around + 1));
  },
  error: (draw, { unit }) => (unit === 'in' ? 0.005 : 0.004) * laplace(draw) * 0.8,
  counted: 0.4,
  cut: (draw) => (draw.chance(0.7) ? 0.5 : 1.2) * laplace(draw),
};
