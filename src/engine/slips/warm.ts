import type { Slip } from '../rows/results.ts';

/** A part read away from reference temperature, SI. */
export interface WarmPart {
  /** Field of the temperature: `at`, `measured.at`. */
  field: string;
  /** Kelvin above reference temperature; below it negative. */
  over: number;
  /** Temperature of the part as typed. */
  text: string;
  size: number;
  /** Expansion of its metal, 1/K; undefined while that is not known. */
  alpha: number | undefined;
  /** The narrowest limits that this size has to meet, upper less lower, and whose they are. */
  band: { width: number; said: string } | undefined;
}

/** Below this nothing is asked where no fit says what it costs (common practice, no source). */
const NEAR = 3;
/** Share of the limits that warmth may take before it is asked about: the tenth of the tolerance that gauging may take. */
const SHARE = 0.1;

/**
 * A part not yet at room temperature, with what that costs in its fit. The sheet corrects the reading; the question is
 * whether to wait, since a part that warm is seldom of one temperature.
 */
export function warm(part: WarmPart, size: (si: number) => string): Slip | undefined {
  const { over, alpha, band, field, text } = part;
  const growth = alpha === undefined ? undefined : Math.abs(part.size * alpha * over);
  const share = band && growth !== undefined && band.width > 0 ? growth / band.width : undefined;
  if (share === undefined ? Math.abs(over) <= NEAR : share <= SHARE) return undefined;
  // In the degrees the temperature was typed in.
  const fahrenheit = /f$/i.test(text);
  const degrees = Number((Math.abs(over) * (fahrenheit ? 1.8 : 1)).toFixed(1));
  const way = over > 0 ? 'above' : 'below';
  const cost =
    growth === undefined
      ? ''
      : share === undefined || !band
        ? ` That is ${size(growth)} on this size.`
        : ` That is ${size(growth)} on this size, ${Math.round(share * 100)} % of what ${band.said} leave.`;
  return {
    key: `warm:${field}`,
    field,
    message: `Read at ${text}, ${degrees} °${fahrenheit ? 'F' : 'C'} ${way} reference temperature.${cost} Can it wait until it has come to room temperature?`,
    ...(growth === undefined ? {} : { cost: growth }),
  };
}
