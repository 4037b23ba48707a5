let down = false;

/**
 * True between a press and its release. What would shift the page waits for the release: else the thing pressed moves
 * from under the pointer and the click is lost.
 */
export const isPointerDown = (): boolean => down;

/** Runs `work` now, or once the pointer is up and the click has been delivered. */
export const afterPointer = (work: () => void): void => {
  if (!down) {
    work();
    return;
  }
  const release = () => {
    removeEventListener('pointerup', release, true);
    removeEventListener('pointercancel', release, true);
    setTimeout(work, 0);
  };
  addEventListener('pointerup', release, true);
  addEventListener('pointercancel', release, true);
};

/** To be called once, when the page starts. */
export const watchPointer = (): void => {
  const set = (state: boolean) => () => {
    down = state;
  };
  addEventListener('pointerdown', set(true), true);
  addEventListener('pointerup', set(false), true);
  addEventListener('pointercancel', set(false), true);
};
