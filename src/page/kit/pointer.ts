let down = false;

/** What waits for the release. */
const waiting: Array<() => void> = [];

/**
 * True from a press until its click has been delivered. What would shift the page waits until then: else the thing pressed
 * moves from under the pointer and the click is lost, or goes to what has come there.
 */
export const isPointerDown = (): boolean => down;

/** Runs `work` now, or once the pointer is up and the click has been delivered. */
export const afterPointer = (work: () => void): void => {
  if (down) waiting.push(work);
  else work();
};

/** A browser makes mouse events and the click of a tap after the finger is up, or none after a long press; ms. */
const TAP = 500;

/** To be called once, when the page starts. */
export const watchPointer = (): void => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const release = () => {
    clearTimeout(timer);
    down = false;
    // In a task of its own: this is heard before whatever was pressed hears of it.
    if (waiting.length > 0)
      setTimeout(() => {
        for (const work of waiting.splice(0)) work();
      }, 0);
  };
  addEventListener(
    'pointerdown',
    () => {
      clearTimeout(timer);
      down = true;
    },
    true,
  );
  addEventListener(
    'pointerup',
    ({ pointerType }) => {
      if (pointerType === 'touch') timer = setTimeout(release, TAP);
      else release();
    },
    true,
  );
  addEventListener('click', release, true);
  addEventListener('pointercancel', release, true);
};
