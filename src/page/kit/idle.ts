/** Work to do when the page has nothing better to do, so that a chunk is there before it is asked for. */
export const whenIdle = (work: () => void): void => {
  if ('requestIdleCallback' in window) requestIdleCallback(work, { timeout: 3000 });
  else setTimeout(work, 500);
};
