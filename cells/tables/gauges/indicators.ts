import type { GaugeKind } from './gauge.ts';
import { b89dial, inches, iso463, makers, metric } from './gauge.ts';

const kinds: readonly GaugeKind[] = [
  inches('dial-indicator-thou', 'Dial indicator, 0.001 in', 0, 1, [1, 1, 0, 0.2], b89dial),
  inches('dial-indicator-tenth', 'Dial indicator, 0.0001 in', 0, 0.025, [0.1, 0.1, 0, 0.03], b89dial),
  metric('dial-indicator-hundredth', 'Dial indicator, 0.01 mm', 0, 10, [10, 15, 0, 3], iso463),
  metric('dial-indicator-micrometre', 'Dial indicator, 0.001 mm', 0, 1, [1, 5, 0, 0.5], iso463),
  inches(
    'test-indicator-half-thou',
    'Lever test indicator, 0.0005 in',
    0,
    0.03,
    [0.5, 0.5, 0, 0.1],
    makers,
    'Reads true with the stylus square to the motion: cosine error else.',
  ),
  inches(
    'test-indicator-tenth',
    'Lever test indicator, 0.0001 in',
    0,
    0.008,
    [0.1, 0.1, 0, 0.03],
    makers,
    'Reads true with the stylus square to the motion: cosine error else.',
  ),
  metric(
    'test-indicator-hundredth',
    'Lever test indicator, 0.01 mm',
    0,
    0.8,
    [10, 10, 0, 2],
    makers,
    'Reads true with the stylus square to the motion: cosine error else.',
  ),
  metric(
    'test-indicator-2-micrometre',
    'Lever test indicator, 0.002 mm',
    0,
    0.2,
    [2, 3, 0, 0.7],
    makers,
    'Reads true with the stylus square to the motion: cosine error else.',
  ),
];

/** Dial and lever indicators: thousandths of an inch or micrometres; resolution, permissible error, setting error, standard deviation. */
export const indicators: readonly GaugeKind[] = kinds.map((kind) => ({ ...kind, use: 'travels' }));
