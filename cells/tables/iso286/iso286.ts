/** ISO 286-1:2010, ISO code system for tolerances on linear sizes: what cells and entries ask of it. */
export { isHole, parseFit } from './designation.ts';
export { standardTolerance } from './grades.ts';
export { fitClearance, limitDeviations } from './limits.ts';
