/** ISO 286-1:2010, ISO code system for tolerances on linear sizes: what cells and entries ask of it. */
export { isHole, parseClass, parseFit } from './iso286/designation.ts';
export { standardTolerance } from './iso286/grades.ts';
export { fitClearance, limitDeviations } from './iso286/limits.ts';
