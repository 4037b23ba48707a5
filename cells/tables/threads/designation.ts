import { drillByName } from '../drills.ts';
import type { TableProblem } from '../table.ts';
import { inch, mm } from '../table.ts';
import { constantPitches, inchThreads, sizeInInches } from './inch-series.ts';
import { metricLimits } from './metric-limits.ts';
import { fineTapDrill, metricThreads } from './metric-series.ts';
import type { Thread, ThreadLimits } from './thread.ts';
import { basicMinor, basicPitchDiameter } from './thread.ts';
import { unifiedLimits } from './unified-limits.ts';

const withLimits = (
  thread: Thread,
  limits: ThreadLimits | TableProblem | undefined,
): Thread | TableProblem =>
  limits === undefined ? thread : 'problem' in limits ? limits : { ...thread, limits };

const metric = (text: string): Thread | TableProblem | undefined => {
  const match = /^M\s*(\d+(?:[.,]\d+)?)(?:\s*[x×*]\s*(\d+(?:[.,]\d+)?))?(?:\s*-\s*([0-9A-Za-z]+))?$/i.exec(
    text,
  );
  if (match === null) return undefined;
  const number = (x: string): number => Number(x.replace(',', '.'));
  const major = number(match[1]!);
  const row = metricThreads.find((each) => each.major === major);
  if (row === undefined)
    return { problem: `M${major} is no size of ISO 261: the nearest are ${nearestMetric(major)}.` };
  const pitch = match[2] === undefined ? row.coarse : number(match[2]);
  const all = [...(row.coarse === undefined ? [] : [row.coarse]), ...row.fine];
  if (pitch === undefined)
    return { problem: `M${major} has no coarse pitch: write the pitch, such as M${major}x${row.fine[0]}.` };
  if (!all.includes(pitch))
    return {
      problem: `M${major} is not made with pitch ${pitch} (ISO 261): ${all.map((p) => `M${major}x${p}`).join(', ')}.`,
    };
  const coarse = pitch === row.coarse;
  const drill = coarse ? row.tapDrill! : fineTapDrill(major, pitch);
  const thread: Thread = {
    designation: `M${major}x${pitch}`,
    system: 'metric',
    series: coarse ? 'M coarse' : 'M fine',
    major: mm(major),
    pitch: mm(pitch),
    pitchDiameter: mm(basicPitchDiameter(major, pitch)),
    minor: mm(basicMinor(major, pitch)),
    // ISO 898-1: diameter midway between pitch diameter and root.
    stressArea: (Math.PI / 4) * mm(major - 0.9382 * pitch) ** 2,
    tapDrill: { name: `${drill} mm`, diameter: mm(drill) },
  };
  return withLimits(thread, match[3] === undefined ? undefined : metricLimits(major, pitch, match[3]));
};

const nearestMetric = (major: number): string =>
  [...metricThreads]
    .sort((a, b) => Math.abs(a.major - major) - Math.abs(b.major - major))
    .slice(0, 2)
    .map((row) => `M${row.major}`)
    .join(' and ');

const seriesWords: Readonly<Record<string, string>> = {
  NC: 'UNC',
  NF: 'UNF',
  NEF: 'UNEF',
  UNRC: 'UNC',
  UNRF: 'UNF',
};

const inchThread = (text: string): Thread | TableProblem | undefined => {
  const match =
    /^(?:no\.?\s*|#)?((?:\d+(?:[\s-]+\d+\/\d+)?|\d+\/\d+|\d*\.\d+))\s*[-–]\s*(\d+(?:\.\d+|[\s-]1\/2)?)\s*(?:[\s-]*([A-Z]{2,4}))?(?:\s*[-–\s]\s*([123][AB]))?$/i.exec(
      text,
    );
  if (match === null) return undefined;
  const [, sizeText, countText, seriesText, grade] = match as unknown as [
    string,
    string,
    string,
    string?,
    string?,
  ];
  const perInch = Number(countText.replace(/[\s-]1\/2$/, '.5'));
  // `10-32` is number 10: the mark is often left off, and no inch thread of that count has that size.
  const numbered =
    /^(no|#)/i.test(text) ||
    inchThreads.some((each) => each.size === `#${sizeText}` && each.perInch === perInch);
  const size = numbered ? `#${Number(sizeText)}` : sizeText.replace(/\s+/g, '-');
  const major = sizeInInches(size);
  if (major === undefined) return undefined;
  const asked =
    seriesText === undefined
      ? undefined
      : (seriesWords[seriesText.toUpperCase()] ?? seriesText.toUpperCase());
  if (asked !== undefined && !['UNC', 'UNF', 'UNEF', 'UN', 'UNS'].includes(asked))
    return { problem: `"${asked}" is no unified series: UNC, UNF, UNEF, UN or UNS.` };
  const row = inchThreads.find(
    (each) =>
      Math.abs(each.major - major) < 1e-6 &&
      each.perInch === perInch &&
      (asked === undefined || each.series === asked),
  );
  const standard = asked === 'UNC' || asked === 'UNF' || asked === 'UNEF';
  if (row === undefined && standard) {
    const right = inchThreads.find((each) => Math.abs(each.major - major) < 1e-6 && each.series === asked);
    return {
      problem: right
        ? `${size} ${asked} has ${right.perInch} threads per inch, not ${perInch}: write ${size}-${right.perInch} ${asked}, or ${size}-${perInch} UN or UNS.`
        : `${size} is no size of the ${asked} series.`,
    };
  }
  if (row === undefined && asked === undefined && !(constantPitches.includes(perInch) && major >= 0.25))
    return {
      problem: `${size}-${perInch} is in no standard series (UNC, UNF, UNEF, UN): write UNS behind it if it is special.`,
    };
  const series = row?.series ?? asked ?? 'UN';
  if (series === 'UN' && !constantPitches.includes(perInch))
    return {
      problem: `UN threads have ${constantPitches.join(', ')} threads per inch, not ${perInch}: write UNS for a special thread.`,
    };
  const P = 1 / perInch;
  const drill = row?.tapDrill === undefined ? undefined : drillByName(row.tapDrill);
  const thread: Thread = {
    designation: `${row?.size ?? size}-${perInch} ${series}`,
    system: 'inch',
    series,
    major: inch(major),
    pitch: inch(P),
    perInch,
    pitchDiameter: inch(basicPitchDiameter(major, P)),
    minor: inch(basicMinor(major, P)),
    // ASME B1.1: 0.7854 (D - 0.9743/n)^2.
    stressArea: (Math.PI / 4) * inch(major - 0.9743 * P) ** 2,
    ...(drill === undefined || 'problem' in drill
      ? {}
      : { tapDrill: { name: drill.name, diameter: drill.diameter } }),
  };
  return withLimits(
    thread,
    grade === undefined ? undefined : unifiedLimits(major, perInch, series, grade.toUpperCase()),
  );
};

/**
 * The thread a drawing names: `3/8-16 UNC-2B`, `#10-32 UNF`, `10-32`, `1-1/8-7`, `M8`, `M8x1.25`, `M8x1 - 6H`. With a class
 * the limits come along.
 */
export const threadByDesignation = (text: string): Thread | TableProblem => {
  const bare = text.trim();
  return (
    metric(bare) ??
    inchThread(bare) ?? {
      problem: `"${bare}" is not a thread designation: write size-threads per inch, such as 3/8-16 UNC-2B, or M8x1.25-6H.`,
    }
  );
};
