/** Keeps the screen from going dark while readings are taken, where the browser lets the page. @returns the way to let go. */
export const stayLit = (): (() => void) => {
  let lock: WakeLockSentinel | undefined;
  let gone = false;
  const take = async () => {
    // Absent on a page that came over plain HTTP from another machine.
    const taken = await navigator.wakeLock?.request('screen').catch(() => undefined);
    if (gone) void taken?.release();
    else lock = taken;
  };
  // The browser lets it go with the page out of sight.
  const again = () => {
    if (!document.hidden) void take();
  };
  again();
  document.addEventListener('visibilitychange', again);
  return () => {
    gone = true;
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  };
};
