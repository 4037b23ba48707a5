import { boreAndDepthGauges } from './bores-and-depths.ts';
import type { GaugeKind } from './gauge.ts';
import { indicators } from './indicators.ts';
import { mastersAndFeelers } from './masters-and-feelers.ts';
import { outsideGauges } from './outside.ts';

export type { GaugeKind } from './gauge.ts';

/** Common shop gauges in good order; see `GaugeKind`. */
export const gauges: readonly GaugeKind[] = [
  ...outsideGauges,
  ...boreAndDepthGauges,
  ...indicators,
  ...mastersAndFeelers,
];

export const gaugeByKey = (key: string): GaugeKind | undefined => gauges.find((each) => each.key === key);

export const gaugeTable = {
  title: 'Gauges',
  rows: gauges.map(
    ({ key, name, range, use, resolution, permissible_error, setting_error, repeatability, note }) => ({
      key,
      name,
      columns: { resolution, permissible_error, setting_error, repeatability },
      range,
      ...(use === undefined ? {} : { use }),
      ...(note === undefined ? {} : { note }),
    }),
  ),
};
