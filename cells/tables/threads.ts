/** Screw threads: unified (ASME B1.1) and ISO metric (ISO 261, 724, 965). */
export { threadByDesignation } from './threads/designation.ts';
export { inchThreads } from './threads/inch-series.ts';
export { metricThreads } from './threads/metric-series.ts';
export type { Thread, ThreadLimits } from './threads/thread.ts';
export { holeForPercent, percentOfThread } from './threads/thread.ts';
