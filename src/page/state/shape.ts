import type { CellResult, OutputResult } from '../../engine/rows/results.ts';

/** The same but for its numbers. */
const isAlike = (a: unknown, b: unknown): boolean => {
  if (a === b || (typeof a === 'number' && typeof b === 'number')) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(b);
  return (
    keys.length === Object.keys(a).length &&
    keys.every((key) => Object.hasOwn(a, key) && isAlike(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
};

const sameOutput = (a: OutputResult, b: OutputResult): boolean =>
  a === b || (a.problem === b.problem && isAlike(a, b));

/**
 * Whether two results of a cell differ in nothing but their figures, and in by how much limits are kept. Parts that did
 * not change are the same objects in both, as the engine's client hands them over.
 */
export const sameShape = (a: CellResult, b: CellResult): boolean => {
  const { outputs, ...now } = b;
  const names = Object.keys(outputs);
  return (
    Object.entries(now).every(([field, value]) => a[field as keyof CellResult] === value) &&
    names.length === Object.keys(a.outputs).length &&
    names.every((name) => {
      const before = a.outputs[name];
      return before !== undefined && sameOutput(before, outputs[name] as OutputResult);
    })
  );
};
