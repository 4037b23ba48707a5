/** A chunk fetched once; fetched again after a failure. */
const once = <T>(load: () => Promise<T>) => {
  let asked: Promise<T> | undefined;
  return () => {
    asked ??= load().catch((error: unknown) => {
      asked = undefined;
      throw error;
    });
    return asked;
  };
};

export const loadEditor = once(() => import('./mount.ts'));

/** The reading of entries, which writing one into the sheet needs. */
export const loadCommit = once(() => import('./commit.ts'));
