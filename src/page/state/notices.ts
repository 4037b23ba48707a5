import { createSignal } from 'solid-js';

export interface Notice {
  text: string;
  /** One thing to do about it. */
  action?: { label: string; run: () => void };
}

/** One short message at a time, read out, and gone with the next one or when closed. */
export const createNotices = () => {
  const [notice, setNotice] = createSignal<Notice>();
  return {
    notice,
    say: (text: string, action?: Notice['action']) => setNotice({ text, ...(action && { action }) }),
    close: () => setNotice(undefined),
  };
};

export type Notices = ReturnType<typeof createNotices>;
