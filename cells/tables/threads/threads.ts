/** Screw threads: unified (ASME B1.1) and ISO metric (ISO 261, 724, 965). */
export { threadByDesignation } from './designation.ts';
export { inchThreads } from './inch-series.ts';
export { metricThreads } from './metric-series.ts';
export type { Thread, ThreadLimits } from './thread.ts';
export { holeForPercent, percentOfThread } from './thread.ts';
