/** Longest wait for a store that gives no answer, ms: what is shown then is not called saved. */
const PATIENCE = 1000;

/**
 * Runs what an edit led to once the edit is stored, in order: a figure that was seen is there again, though the browser is
 * ended at that moment. The engine works while the disk does, so this seldom costs a frame.
 * @param settled settles once what has been entered so far is stored; undefined where no store is under way
 */
export const onceStored = (settled: () => Promise<void> | undefined) => {
  let last: Promise<unknown> | undefined;
  return (work: () => void): void => {
    const stored = settled();
    if (!stored && !last) {
      work();
      return;
    }
    const patience = new Promise<void>((go) => setTimeout(go, PATIENCE));
    const now = Promise.all([last, stored && Promise.race([stored, patience])]).then(() => {
      if (last === now) last = undefined;
      work();
    });
    last = now;
  };
};
