/** Least and greatest, metres. */
export interface Range {
  min: number;
  max: number;
}

/** Limits of a toleranced thread, metres. What the standard leaves open (the root) is absent. */
export interface ThreadLimits {
  class: string;
  internal: boolean;
  major?: Range;
  pitch: Range;
  minor?: Range;
}

/** A screw thread of a standard series. SI base units. */
export interface Thread {
  /** As the drawing writes it, without class: `3/8-16 UNC`, `M8x1.25`. */
  designation: string;
  system: 'inch' | 'metric';
  series: string;
  /** Basic major diameter, m. */
  major: number;
  /** m */
  pitch: number;
  /** Threads per inch, of an inch thread. */
  perInch?: number;
  /** Basic pitch diameter, m. */
  pitchDiameter: number;
  /** Basic minor diameter of the internal thread, m. */
  minor: number;
  /** Tensile stress area of the external thread, m2. */
  stressArea: number;
  /** The drill usually taken before tapping, if there is one. */
  tapDrill?: { name: string; diameter: number };
  limits?: ThreadLimits;
}

/** Height of the sharp triangle over pitch; 60 degree threads: ISO 68-1, ASME B1.1. */
const H = Math.sqrt(3) / 2;
export const basicPitchDiameter = (major: number, pitch: number): number => major - (3 / 4) * H * pitch;
export const basicMinor = (major: number, pitch: number): number => major - (5 / 4) * H * pitch;

/**
 * Percent of thread a drilled hole leaves: 100 is the basic thread height 0.64952 P on each side, so a hole at the basic
 * minor diameter leaves 83.3. Customary in inch and metric shops alike.
 */
export const percentOfThread = (major: number, pitch: number, hole: number): number =>
  ((major - hole) / ((3 / 2) * H * pitch)) * 100;
/** The hole that leaves so many percent. */
export const holeForPercent = (major: number, pitch: number, percent: number): number =>
  major - (3 / 2) * H * pitch * (percent / 100);
