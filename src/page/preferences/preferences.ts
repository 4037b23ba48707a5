import { createRoot, createSignal } from 'solid-js';
import { type PreferenceName, type Preferences, preferencesOf } from './choices.ts';
import { readKept, writeKept } from './kept.ts';

const KEY = 'preferences';

const [preferences, setAll] = createRoot(() => createSignal<Preferences>(preferencesOf(readKept(KEY))));

/** The user's preferences; what reads them follows a change at once. */
export { preferences };

export const prefer = <K extends PreferenceName>(name: K, value: Preferences[K]): void => {
  const next = { ...preferences(), [name]: value };
  setAll(next);
  writeKept(KEY, next);
};

/** Keeps pages in other tabs alike. To be called once, when the page starts. */
export const watchPreferences = (): void => {
  addEventListener('storage', (event) => {
    if (event.key === null || event.key.endsWith(KEY)) setAll(preferencesOf(readKept(KEY)));
  });
};
