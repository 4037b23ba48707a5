import { drillByName } from './tables/drills.ts';
import { limitDeviations } from './tables/iso286/iso286.ts';
import { threadByDesignation } from './tables/threads/threads.ts';

/** Table look-ups that an entry may name: ISO 286 classes, drills, threads. Sizes in metres. */
export const handbook = {
  classLimits(nominal: number, cls: string): { low: number; high: number } | { problem: string } {
    const found = limitDeviations(nominal, cls);
    return 'problem' in found ? found : { low: found.lower, high: found.upper };
  },
  drill(key: string): { size: number; name: string } | undefined {
    const found = drillByName(key);
    return 'problem' in found ? undefined : { size: found.diameter, name: found.name };
  },
  thread(designation: string): { major: number; name: string } | undefined {
    const found = threadByDesignation(designation);
    return 'problem' in found ? undefined : { major: found.major, name: found.designation };
  },
};
