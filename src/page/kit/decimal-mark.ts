import { createRoot, createSignal } from 'solid-js';
import type { Top } from '../../language/grammar/tree.ts';
import { preferences } from './preferences.ts';

type Writer = (text: string, top?: Top) => string;

const [writer, setWriter] = createRoot(() => createSignal<{ write: Writer }>());
let asked = false;

export const usesComma = (): boolean => preferences().decimal === ',';

/**
 * Stored text, which has a decimal point, as the user writes it. The language that tells a decimal point from others is
 * fetched when somebody first wants a comma.
 */
export const writtenOut = (text: string, top?: Top): string => {
  if (!usesComma() || !text.includes('.')) return text;
  const found = writer();
  if (found) return found.write(text, top);
  if (!asked) {
    asked = true;
    void import('../../language/decimal.ts').then(
      ({ toDecimalComma }) => setWriter({ write: toDecimalComma }),
      () => {
        asked = false;
      },
    );
  }
  return text;
};

/**
 * Units by which a text is stored and that nobody writes, as they are read: what is read is the same unit. Tenths only where
 * the sheet has settled which are meant.
 */
export const inUsualUnits = (text: string, tenth?: string): string =>
  text
    .replace(/\buin\b/g, 'µin')
    .replace(/\btenth_(?:in|mm)\b/g, (symbol) => (symbol === tenth ? 'tenths' : symbol));

/** The same for a tolerance, which has a grammar of its own. */
export const writtenTolerance = (text: string): string => writtenOut(text, 'Cut');
