/** Whether what was committed is on the disk. Only `saved` means so. */
export interface StorageState {
  state: 'saved' | 'saving' | 'unsaved' | 'refused' | 'full';
  /** What happened and what to do, for people; absent while all is well. */
  message?: string;
}

export const SAVED: StorageState = { state: 'saved' };
export const SAVING: StorageState = { state: 'saving' };

const FILE = 'Save the sheet to a file now, so that nothing is lost.';

export const REFUSED = {
  missing: `This browser keeps no data for this page, so what you enter lasts only until the page is closed. ${FILE}`,
  refused: `The browser refuses to keep data for this page (a private window does so), so what you enter lasts only until the page is closed. ${FILE}`,
  silent: `The browser does not answer when asked to keep data, so what you enter lasts only until the page is closed. ${FILE} Then close other tabs of this page and load it again.`,
  newer: `Another tab has opened this shop with a newer edition of Fitwright. ${FILE} Then load this page again.`,
} as const;

/** The browser may have dropped what is stored, under an open page. */
export const LOST: StorageState = {
  state: 'unsaved',
  message: `The browser has closed its store for this page, and may have dropped what was in it. The sheet is being stored again, whole; it is not saved until that is done. ${FILE}`,
};

export const DISCARDED: StorageState = {
  state: 'unsaved',
  message:
    'This sheet was deleted for good in another tab: what you see is here alone, and goes with this tab. Save it to a file, or try again to store it anew; the next entry does so too.',
};

const FULL: StorageState = {
  state: 'full',
  message: `The disk space for this page is full: the last entries are not saved. ${FILE}`,
};

/** What a failed transaction or opening means. Both names of the quota error are in use among browsers. */
export function stateOf(error: unknown): StorageState {
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  const text = error instanceof Error || error instanceof DOMException ? error.message : String(error);
  if (name === 'QuotaExceededError' || name === 'NS_ERROR_DOM_QUOTA_REACHED') return FULL;
  // A disk that is full for everybody breaks the connection instead; only the text of the error tells.
  if (/no.?space|disk.{0,8}full/i.test(text)) return FULL;
  if (name === 'VersionError') return { state: 'refused', message: REFUSED.newer };
  if (name === 'SecurityError') return { state: 'refused', message: REFUSED.refused };
  return {
    state: 'unsaved',
    message: `The last entries could not be saved (${text.slice(0, 80) || name || 'no reason given'}); it is tried again. ${FILE}`,
  };
}

export const SLOW: StorageState = {
  state: 'unsaved',
  message: `The browser has not confirmed for a while that the last entries are saved. ${FILE}`,
};
