import type { GaugeUse } from '../../record/cell.ts';
import type { Origin, Property } from '../table.ts';
import { fromMemory, inch, mm, property, thou, um } from '../table.ts';

/**
 * Common shop gauges in good order, for want of a certificate: every figure is an assumption, to be replaced by the
 * user's own. `permissible_error` is the usual maximum permissible error either way; `repeatability` is the standard
 * deviation of one reading by a practised hand; `setting_error` what setting or zeroing adds, either way.
 */
export interface GaugeKind {
  key: string;
  name: string;
  /** m; what it measures. */
  range: readonly [number, number];
  resolution: Property;
  permissible_error: Property;
  setting_error: Property;
  repeatability: Property;
  use?: GaugeUse;
  note?: string;
}

export const assumed = (remark: string): Origin => fromMemory(`assumption: ${remark}`);
export const iso3611 = assumed('ISO 3611:1978, 4 um + L/50 by range');
export const b89 = assumed('ASME B89.1.13 and makers\u2019 usual data');
export const iso13385 = assumed('ISO 13385-1 and makers\u2019 usual data');
export const iso463 = assumed('ISO 463, DIN 878 and makers\u2019 usual data');
export const b89dial = assumed('ASME B89.1.10M, one division over the first turns');
export const makers = assumed('makers\u2019 usual data');
export const practice = assumed('common practice, no source');
export const blocks = assumed('ISO 3650 grade 1, up to 100 mm');

type Figures = readonly [resolution: number, permissible: number, setting: number, repeatability: number];

/** A limit is not itself in doubt: low and high equal the value. */
const gauge = (
  key: string,
  name: string,
  range: readonly [number, number],
  unit: number,
  figures: Figures,
  origin: Origin,
  note?: string,
): GaugeKind => {
  const [resolution, permissible_error, setting_error, repeatability] = figures.map((x) =>
    property(unit, x, [x, x], origin),
  ) as [Property, Property, Property, Property];
  return {
    key,
    name,
    range,
    resolution,
    permissible_error,
    setting_error,
    repeatability,
    ...(note === undefined ? {} : { note }),
  };
};
export const inches = (
  key: string,
  name: string,
  from: number,
  to: number,
  thousandths: Figures,
  origin: Origin,
  note?: string,
): GaugeKind => gauge(key, name, [inch(from), inch(to)], thou(1), thousandths, origin, note);
export const metric = (
  key: string,
  name: string,
  from: number,
  to: number,
  micrometres: Figures,
  origin: Origin,
  note?: string,
): GaugeKind => gauge(key, name, [mm(from), mm(to)], um(1), micrometres, origin, note);

export const transfer =
  'The micrometer it is read with is a gauge of its own: name it as what this one is set in.';
export const comparing =
  'Compares with what it was set to: name the ring, blocks or micrometer as what it is set in.';
export const feel = 'By feel: two hands differ. Take the whole spread of several readings.';
