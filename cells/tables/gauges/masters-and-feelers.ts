import type { GaugeKind } from './gauge.ts';
import { assumed, blocks, feel, inches, makers, metric, practice } from './gauge.ts';

/** Blocks, rings and plugs; feelers and gauging strip: thousandths of an inch or micrometres; resolution, permissible error, setting error, standard deviation. */
export const mastersAndFeelers: readonly GaugeKind[] = [
  inches('gauge-blocks-in', 'Gauge blocks, inch, a wrung stack', 0.05, 4, [0, 0.03, 0, 0.002], blocks),
  metric('gauge-blocks-mm', 'Gauge blocks, metric, a wrung stack', 0.5, 100, [0, 0.6, 0, 0.05], blocks),
  inches(
    'setting-ring-in',
    'Setting ring, inch',
    0.25,
    6,
    [0, 0.06, 0, 0.01],
    assumed('ASME B89.1.5 class X, 0.825 to 1.510 in'),
    'The size on its certificate, not its nominal.',
  ),
  metric(
    'setting-ring-mm',
    'Setting ring, metric',
    6,
    150,
    [0, 1.5, 0, 0.25],
    makers,
    'The size on its certificate, not its nominal.',
  ),
  inches(
    'plug-gauge-in',
    'Plug or pin gauge, class ZZ',
    0.011,
    1,
    [0, 0.2, 0, 0.1],
    assumed('class ZZ, 0.0002 in one way'),
    'Goes or does not go: the hole lies between two pins.',
  ),
  metric(
    'plug-gauge-mm',
    'Plug or pin gauge, metric',
    0.3,
    25,
    [0, 4, 0, 2],
    makers,
    'Goes or does not go: the hole lies between two pins.',
  ),
  inches('feeler-in', 'Feeler blades, inch', 0.0015, 0.035, [1, 0.3, 0, 0.4], practice, feel),
  metric('feeler-mm', 'Feeler blades, metric', 0.03, 1, [10, 8, 0, 10], practice, feel),
  inches(
    'plastic-strip-in',
    'Plastic gauging strip',
    0.001,
    0.009,
    [0.5, 0.5, 0, 0.25],
    practice,
    'Do not turn the shaft; it reads the clearance across one place only.',
  ),
  metric(
    'plastic-strip-mm',
    'Plastic gauging strip, metric',
    0.025,
    0.23,
    [12, 12, 0, 6],
    practice,
    'Do not turn the shaft; it reads the clearance across one place only.',
  ),
];
