let down = false;

/** What waits for the release. */
const waiting: Array<() => void> = [];

/**
 * True from a press until its click comes. What would shift the page waits until then: else the thing pressed
 * moves from under the pointer and the click is lost, or goes to what has come there.
 */
export const isPointerDown = (): boolean => down;

/**
 * Runs `work` now, or as the click comes: what is pressed is settled by then, and what it does finds the work done. A file
 * saved by a press has the entry in it that was open until then.
 */
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
    for (const work of waiting.splice(0)) work();
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
      // The click comes in the same task, if it comes at all. Before it nothing may move.
      timer = setTimeout(release, pointerType === 'touch' ? TAP : 0);
    },
    true,
  );
  for (const ends of ['click', 'pointercancel', 'keydown', 'change']) addEventListener(ends, release, true);
  // The list of a box swallows the release of the press that opened it.
  addEventListener('pointermove', ({ buttons }) => down && buttons === 0 && release(), true);
};
