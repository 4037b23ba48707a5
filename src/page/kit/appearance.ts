import { createEffect, createRoot, createSignal } from 'solid-js';
import { preferences } from './preferences.ts';

/** Puts the chosen paper and text size on the document, where the style sheets look. To be called once, at the start. */
export const watchAppearance = (): void => {
  const query = matchMedia('(prefers-color-scheme: dark)');
  createRoot(() => {
    const [dark, setDark] = createSignal(query.matches);
    query.addEventListener('change', () => setDark(query.matches));
    createEffect(() => {
      const { look, text } = preferences();
      const { dataset } = document.documentElement;
      dataset.look = look === 'system' ? (dark() ? 'dark' : 'light') : look;
      dataset.text = text;
    });
  });
};
