/** Room the browser gives this page, bytes. */
export interface Space {
  used: number;
  quota: number;
  /** The browser has promised not to clear the shop by itself when the disk gets full. */
  kept: boolean;
}

const storage = (): StorageManager | undefined =>
  typeof navigator === 'undefined' ? undefined : navigator.storage;

/** Undefined where the browser does not say. */
export async function space(): Promise<Space | undefined> {
  try {
    const [estimate, kept] = await Promise.all([storage()?.estimate(), storage()?.persisted()]);
    if (estimate?.quota === undefined) return undefined;
    return { used: estimate.usage ?? 0, quota: estimate.quota, kept: kept === true };
  } catch {
    return undefined;
  }
}

/** Asks the browser for that promise; some ask the user. Best after the first entry, when it is plain what for. */
export async function askToKeep(): Promise<boolean> {
  try {
    return (await storage()?.persist()) === true;
  } catch {
    return false;
  }
}
