import { limitDeviations } from './tables/iso286.ts';

/** Table look-ups that an entry may name: ISO 286 classes, drills, threads. Sizes in metres. */
export const handbook = {
  classLimits(nominal: number, cls: string): { low: number; high: number } | { problem: string } {
    const found = limitDeviations(nominal, cls);
    return 'problem' in found ? found : { low: found.lower, high: found.upper };
  },
  drill: (_key: string): { size: number; name: string } | undefined => undefined,
  thread: (_designation: string): { major: number; name: string } | undefined => undefined,
};
