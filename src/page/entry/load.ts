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

type Commit = typeof import('./commit.ts');
let commit: Commit | undefined;

/** The reading of entries, which writing one into the sheet needs. */
export const loadCommit = once(async () => {
  commit = await import('./commit.ts');
  return commit;
});

/** The reading of entries where it has been loaded: what is at hand can be written at once. */
export const commitAtHand = (): Commit | undefined => commit;
