import type { TableProblem } from './table.ts';
import { inch, mm } from './table.ts';

export type DrillSeries = 'number' | 'letter' | 'fraction' | 'metric';

export interface Drill {
  /** As the shop writes it: `#7`, `F`, `27/64`, `1 1/8`, `6.8 mm`. */
  name: string;
  series: DrillSeries;
  /** m */
  diameter: number;
}

/** Number drills 1 to 97, inches, ten a row. ASME B94.11M-1993 Table 1 (1 to 80 seen, 81 to 97 from memory). */
const numbers = `
0.2280 0.2210 0.2130 0.2090 0.2055 0.2040 0.2010 0.1990 0.1960 0.1935
0.1910 0.1890 0.1850 0.1820 0.1800 0.1770 0.1730 0.1695 0.1660 0.1610
0.1590 0.1570 0.1540 0.1520 0.1495 0.1470 0.1440 0.1405 0.1360 0.1285
0.1200 0.1160 0.1130 0.1110 0.1100 0.1065 0.1040 0.1015 0.0995 0.0980
0.0960 0.0935 0.0890 0.0860 0.0820 0.0810 0.0785 0.0760 0.0730 0.0700
0.0670 0.0635 0.0595 0.0550 0.0520 0.0465 0.0430 0.0420 0.0410 0.0400
0.0390 0.0380 0.0370 0.0360 0.0350 0.0330 0.0320 0.0310 0.0292 0.0280
0.0260 0.0250 0.0240 0.0225 0.0210 0.0200 0.0180 0.0160 0.0145 0.0135
0.0130 0.0125 0.0120 0.0115 0.0110 0.0105 0.0100 0.0095 0.0091 0.0087
0.0083 0.0079 0.0075 0.0071 0.0067 0.0063 0.0059
`;

/** Letter drills A to Z, inches. ASME B94.11M-1993 Table 1, seen. */
const letters = `
0.234 0.238 0.242 0.246 0.250 0.257 0.261 0.266 0.272 0.277 0.281 0.290 0.295
0.302 0.316 0.323 0.332 0.339 0.348 0.358 0.368 0.377 0.386 0.397 0.404 0.413
`;

const figures = (text: string): number[] => text.trim().split(/\s+/).map(Number);

const numberDrills: Drill[] = figures(numbers).map((x, i) => ({
  name: `#${i + 1}`,
  series: 'number',
  diameter: inch(x),
}));
const letterDrills: Drill[] = figures(letters).map((x, i) => ({
  name: String.fromCharCode(65 + i),
  series: 'letter',
  diameter: inch(x),
}));

const fractionName = (sixtyFourths: number): string => {
  const whole = Math.floor(sixtyFourths / 64);
  let top = sixtyFourths % 64;
  let bottom = 64;
  while (top !== 0 && top % 2 === 0) {
    top /= 2;
    bottom /= 2;
  }
  const fraction = top === 0 ? '' : `${top}/${bottom}`;
  return whole === 0 ? fraction : fraction === '' ? String(whole) : `${whole} ${fraction}`;
};

/** By 64ths to 1 3/4 in, by 32nds to 2 1/4, by 16ths to 3 1/2. */
const fractionDrills: Drill[] = Array.from({ length: 224 }, (_, i) => i + 1)
  .filter((k) => k <= 112 || (k <= 144 ? k % 2 === 0 : k % 4 === 0))
  .map((k) => ({ name: fractionName(k), series: 'fraction', diameter: inch(k / 64) }));

/** Hundredths of a mm: by 0.05 to 3 mm, by 0.1 and quarters to 14, by 0.25 to 32, by 0.5 to 50. ISO 235, from memory. */
const metricDrills: Drill[] = Array.from({ length: 4981 }, (_, i) => i + 20)
  .filter((h) =>
    h <= 300
      ? h % 5 === 0
      : h <= 1400
        ? h % 10 === 0 || h % 25 === 0
        : h <= 3200
          ? h % 25 === 0
          : h % 50 === 0,
  )
  .map((h) => ({ name: `${h / 100} mm`, series: 'metric', diameter: mm(h / 100) }));

export const drills: readonly Drill[] = [
  ...numberDrills,
  ...letterDrills,
  ...fractionDrills,
  ...metricDrills,
];

const index = new Map(drills.map((drill) => [drill.name, drill]));

/** `#7`, `No. 7`, `7 drill`; `F`, `f drill`, `letter F`; `27/64`, `1-1/8`, `1 1/8 in`; `6.8 mm`, `6,8mm`. */
const canonical = (text: string): string => {
  const bare = text
    .trim()
    .replace(/\s*\bdrill\b\s*/i, '')
    .replace(/^(letter|number)\s+/i, '')
    .replace(/\s*(in|inch|")$/i, '')
    .trim();
  const number = /^(?:#|no\.?\s*|wire\s*)(\d{1,2})$/i.exec(bare);
  if (number) return `#${Number(number[1])}`;
  if (/^[a-z]$/i.test(bare)) return bare.toUpperCase();
  const metric = /^(\d+(?:[.,]\d+)?)\s*mm$/i.exec(bare);
  if (metric) return `${Number(metric[1]!.replace(',', '.'))} mm`;
  const mixed = /^(?:(\d+)[\s-]+)?(\d+)\/(\d+)$/.exec(bare);
  if (mixed) {
    const sixtyFourths = (Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3])) * 64;
    return Number.isInteger(sixtyFourths) ? fractionName(sixtyFourths) : bare;
  }
  return bare;
};

export const drillByName = (text: string): Drill | TableProblem =>
  index.get(canonical(text)) ?? {
    problem: `"${text.trim()}" is no standard drill: write #1 to #97, A to Z, a fraction such as 27/64, or mm such as 6.8 mm.`,
  };

/** Sizes equal to a nanometre are equal. */
const slack = 1e-9;
const inchSeries: readonly DrillSeries[] = ['number', 'letter', 'fraction'];

/** The largest drill not above `limit` (m). */
export const drillNotAbove = (
  limit: number,
  series: readonly DrillSeries[] = inchSeries,
): Drill | undefined =>
  drills
    .filter((drill) => series.includes(drill.series) && drill.diameter <= limit + slack)
    .reduce<Drill | undefined>(
      (best, drill) => (best === undefined || drill.diameter > best.diameter ? drill : best),
      undefined,
    );

/** The smallest drill not below `limit` (m). */
export const drillNotBelow = (
  limit: number,
  series: readonly DrillSeries[] = inchSeries,
): Drill | undefined =>
  drills
    .filter((drill) => series.includes(drill.series) && drill.diameter >= limit - slack)
    .reduce<Drill | undefined>(
      (best, drill) => (best === undefined || drill.diameter < best.diameter ? drill : best),
      undefined,
    );
