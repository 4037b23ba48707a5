/** Small things this browser remembers for its user. Where it may keep nothing, they last as long as the page. */
const PREFIX = 'fitwright.';

/** @returns what was kept, or nothing where it is absent, unreadable or not allowed. */
export const readKept = (key: string): unknown => {
  try {
    const text = localStorage.getItem(PREFIX + key);
    return text === null ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
};

export const writeKept = (key: string, value: unknown): void => {
  try {
    if (value === undefined) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, JSON.stringify(value));
  } catch {
    // Storage that is refused or full: it holds until the page goes.
  }
};
