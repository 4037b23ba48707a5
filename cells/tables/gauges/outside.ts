import type { GaugeKind } from './gauge.ts';
import { b89, inches, iso3611, iso13385, metric, practice } from './gauge.ts';

/** Outside micrometers, callipers and rules: thousandths of an inch or micrometres; resolution, permissible error, setting error, standard deviation. */
export const outsideGauges: readonly GaugeKind[] = [
  inches('micrometer-0-1-in', 'Outside micrometer 0 to 1 in, vernier', 0, 1, [0.1, 0.1, 0.05, 0.04], b89),
  inches('micrometer-1-2-in', 'Outside micrometer 1 to 2 in, vernier', 1, 2, [0.1, 0.1, 0.1, 0.05], b89),
  inches('micrometer-2-3-in', 'Outside micrometer 2 to 3 in, vernier', 2, 3, [0.1, 0.15, 0.1, 0.05], b89),
  inches('micrometer-3-4-in', 'Outside micrometer 3 to 4 in, vernier', 3, 4, [0.1, 0.15, 0.1, 0.07], b89),
  inches('micrometer-4-6-in', 'Outside micrometer 4 to 6 in, vernier', 4, 6, [0.1, 0.2, 0.15, 0.1], b89),
  inches(
    'micrometer-thou',
    'Outside micrometer 0 to 1 in, without vernier',
    0,
    1,
    [1, 0.1, 0.1, 0.15],
    b89,
    'A tenth is guessed between lines.',
  ),
  metric('micrometer-0-25-mm', 'Outside micrometer 0 to 25 mm', 0, 25, [1, 4, 1, 1], iso3611),
  metric('micrometer-25-50-mm', 'Outside micrometer 25 to 50 mm', 25, 50, [1, 4, 2, 1.2], iso3611),
  metric('micrometer-50-75-mm', 'Outside micrometer 50 to 75 mm', 50, 75, [1, 5, 2, 1.3], iso3611),
  metric('micrometer-75-100-mm', 'Outside micrometer 75 to 100 mm', 75, 100, [1, 5, 2, 1.5], iso3611),
  metric('micrometer-100-150-mm', 'Outside micrometer 100 to 150 mm', 100, 150, [1, 6, 3, 2], iso3611),
  metric(
    'micrometer-hundredth',
    'Outside micrometer 0 to 25 mm, reading 0.01 mm',
    0,
    25,
    [10, 4, 2, 3],
    iso3611,
    'The micrometre is guessed between lines.',
  ),
  inches('calliper-digital-in', 'Digital calliper, inch', 0, 8, [0.5, 1, 0.5, 0.5], iso13385),
  metric('calliper-digital-mm', 'Digital calliper, metric', 0, 200, [10, 30, 10, 10], iso13385),
  inches('calliper-dial-in', 'Dial calliper', 0, 6, [1, 1, 0.5, 0.5], iso13385),
  inches('calliper-vernier-in', 'Vernier calliper, inch', 0, 8, [1, 1.5, 1, 0.7], iso13385),
  metric('calliper-vernier-mm', 'Vernier calliper reading 0.05 mm', 0, 200, [50, 50, 25, 20], iso13385),
  metric('calliper-vernier-fine-mm', 'Vernier calliper reading 0.02 mm', 0, 200, [20, 30, 20, 15], iso13385),
  inches('rule-in', 'Steel rule, 1/64 in', 0, 12, [15.625, 8, 0, 5], practice),
  metric('rule-mm', 'Steel rule, 0.5 mm', 0, 300, [500, 200, 0, 150], practice),
];
