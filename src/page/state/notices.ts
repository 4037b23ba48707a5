import { createSignal, onCleanup } from 'solid-js';
import { afterPointer } from '../kit/pointer.ts';

export interface Notice {
  text: string;
  /** One thing to do about it. */
  action?: { label: string; run: () => void };
}

/** How long a message stays: time to read it, and longer where something can be done about it; ms. */
const READ = 9_000;
const ACT = 30_000;

/** One short message at a time, read out, and gone with the next one, when closed, or after a while. */
export const createNotices = () => {
  const [notice, setNotice] = createSignal<Notice>();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const close = () => {
    clearTimeout(timer);
    setNotice(undefined);
  };
  const leaveLater = () => {
    clearTimeout(timer);
    const now = notice();
    if (now) timer = setTimeout(() => afterPointer(close), now.action ? ACT : READ);
  };
  onCleanup(() => clearTimeout(timer));
  return {
    notice,
    // Not under a finger: it lies at the foot, where the next press may be aimed.
    say: (text: string, action?: Notice['action']) =>
      afterPointer(() => {
        setNotice({ text, ...(action && { action }) });
        leaveLater();
      }),
    close,
    /** Somebody is at it, by pointer or keyboard: it stays until they have left. */
    stay: () => clearTimeout(timer),
    leaveLater,
  };
};

export type Notices = ReturnType<typeof createNotices>;
