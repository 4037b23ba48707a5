import { createMemo, createRoot, createSignal } from 'solid-js';
import { chosenOf, type PreferenceName, type Preferences, preferencesOf } from './choices.ts';
import { readKept, writeKept } from './kept.ts';

const KEY = 'preferences';

const [chosen, setChosen] = createRoot(() => createSignal(chosenOf(readKept(KEY))));

/** The user's preferences; what reads them follows a change at once. */
export const preferences = createRoot(() => createMemo(() => preferencesOf(chosen())));

/** What was chosen here, without the defaults. */
export const chosenPreferences = chosen;

const keep = (next: Partial<Preferences>): void => {
  setChosen(next);
  writeKept(KEY, next);
};

export const prefer = <K extends PreferenceName>(name: K, value: Preferences[K]): void =>
  keep({ ...chosen(), [name]: value });

/** Takes what another machine's user had chosen, as far as nothing was chosen here. */
export const preferAlso = (saved: unknown): void => keep({ ...chosenOf(saved), ...chosen() });

/** Keeps pages in other tabs alike. To be called once, when the page starts. */
export const watchPreferences = (): void => {
  addEventListener('storage', (event) => {
    if (event.key === null || event.key.endsWith(KEY)) setChosen(chosenOf(readKept(KEY)));
  });
};
