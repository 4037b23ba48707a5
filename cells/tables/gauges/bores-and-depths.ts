import type { GaugeKind } from './gauge.ts';
import { comparing, feel, inches, makers, metric, practice, transfer } from './gauge.ts';

const compares = (kind: GaugeKind): GaugeKind => ({ ...kind, use: 'compares' });

/** Gauges for bores, depths and heights: thousandths of an inch or micrometres; resolution, permissible error, setting error, standard deviation. */
export const boreAndDepthGauges: readonly GaugeKind[] = [
  compares(
    inches(
      'dial-bore-gauge-in',
      'Dial bore gauge, 0.0001 in',
      0.7,
      6,
      [0.1, 0.1, 0.1, 0.08],
      makers,
      comparing,
    ),
  ),
  compares(
    inches(
      'dial-bore-gauge-half-thou',
      'Dial bore gauge, 0.0005 in',
      1.4,
      12,
      [0.5, 0.3, 0.25, 0.2],
      makers,
      comparing,
    ),
  ),
  compares(
    metric('dial-bore-gauge-mm', 'Dial bore gauge, 0.001 mm', 18, 160, [1, 2, 2, 1.5], makers, comparing),
  ),
  compares(
    metric(
      'dial-bore-gauge-hundredth',
      'Dial bore gauge, 0.01 mm',
      18,
      160,
      [10, 5, 5, 4],
      makers,
      comparing,
    ),
  ),
  compares(
    inches(
      'telescoping-gauge-in',
      'Telescoping gauge, read with a micrometer',
      0.3,
      6,
      [0.1, 0.5, 0, 0.3],
      practice,
      `${transfer} ${feel}`,
    ),
  ),
  compares(
    metric(
      'telescoping-gauge-mm',
      'Telescoping gauge, read with a micrometer, metric',
      8,
      150,
      [1, 12, 0, 8],
      practice,
      `${transfer} ${feel}`,
    ),
  ),
  compares(
    inches(
      'small-hole-gauge-in',
      'Small-hole gauge, read with a micrometer',
      0.125,
      0.5,
      [0.1, 0.3, 0, 0.2],
      practice,
      `${transfer} ${feel}`,
    ),
  ),
  compares(
    metric(
      'small-hole-gauge-mm',
      'Small-hole gauge, read with a micrometer, metric',
      3,
      13,
      [1, 8, 0, 5],
      practice,
      `${transfer} ${feel}`,
    ),
  ),
  inches('inside-micrometer-in', 'Inside micrometer with rods', 2, 12, [1, 0.3, 0.2, 0.3], makers, feel),
  metric('inside-micrometer-mm', 'Inside micrometer with rods, metric', 50, 300, [10, 8, 5, 8], makers, feel),
  compares(
    inches(
      'three-point-bore-micrometer-in',
      'Three-point bore micrometer',
      0.25,
      4,
      [0.1, 0.2, 0.1, 0.08],
      makers,
      comparing,
    ),
  ),
  compares(
    metric(
      'three-point-bore-micrometer-mm',
      'Three-point bore micrometer, metric',
      6,
      100,
      [1, 5, 2, 2],
      makers,
      comparing,
    ),
  ),
  inches('depth-micrometer-in', 'Depth micrometer', 0, 6, [1, 0.2, 0.2, 0.2], makers),
  metric('depth-micrometer-mm', 'Depth micrometer, metric', 0, 150, [10, 5, 5, 5], makers),
  inches('height-gauge-in', 'Height gauge on a surface plate', 0, 12, [1, 1, 0.5, 0.5], makers),
  metric('height-gauge-mm', 'Height gauge on a surface plate, metric', 0, 300, [10, 30, 10, 10], makers),
  compares(
    metric('air-gauge', 'Air gauge with two setting masters', 3, 100, [0.5, 1, 1, 0.3], makers, comparing),
  ),
];
