import type { Completion, CompletionContext, CompletionResult } from '@codemirror/autocomplete';
import { searchForm } from '../../../shared/search-form.ts';
import { completionContext } from '../../language/grammar/completion.ts';
import { begunReading } from './begun-reading.ts';
import type { SheetWords } from './sheet-words.ts';
import { signaturesOf } from './signature.ts';

export type CompletionPlace =
  | { kind: 'unit'; from: number; typed: string }
  | { kind: 'output'; from: number; typed: string; of: string }
  | { kind: 'name'; from: number; typed: string };

/** What belongs behind the cursor: a unit behind a number, an output behind a point, else a name or function. */
export const completionPlace = (text: string, at: number): CompletionPlace | undefined => {
  const found = completionContext(text, at);
  if (!found) return undefined;
  if (found.kind === 'output')
    return { kind: 'output', from: found.from, typed: found.prefix, of: found.of ?? '' };
  if (found.kind !== 'unit') return { kind: 'name', from: found.from, typed: found.prefix };
  // A compound unit is completed as a whole: from where the number ends.
  const ahead = /[A-Za-zµ°/.·*]*$/u.exec(text.slice(0, found.from))?.[0] ?? '';
  const from = found.from - ahead.length;
  return { kind: 'unit', from, typed: text.slice(from, at) };
};

/** 2 where it begins with what was typed, 1 where a word of it does or it is held within, else 0. */
const match = (typed: string, ...texts: string[]): number => {
  const wanted = searchForm(typed);
  if (wanted === '') return 1;
  const folded = texts.map(searchForm);
  if (folded.some((text) => text.startsWith(wanted))) return 2;
  return folded.some((text) => text.includes(wanted)) ? 1 : 0;
};

const ranked = (typed: string, options: Offer[]): Completion[] =>
  options
    .map((option) => ({ option, rank: match(typed, option.label, option.also ?? '') }))
    .filter(({ rank }) => rank > 0)
    .sort((a, b) => b.rank - a.rank)
    .map(({ option: { also: _also, ...option } }) => option);

/** A reading by its last digits, names by name or label, outputs, functions with what they take, units that fit. */
export const completeWith =
  (words: SheetWords) =>
  async (context: CompletionContext): Promise<CompletionResult | null> => {
    const text = context.state.doc.toString();
    const begun = begunReading(text, context.pos, words.plan());
    if (begun)
      return { from: begun.from, options: [{ label: begun.reading, type: 'reading' }], filter: false };
    const place = completionPlace(text, context.pos);
    if (!place) return null;
    // Nothing typed yet: only when asked for, or for a unit behind a blank.
    if (place.typed === '' && !context.explicit && place.kind === 'name') return null;
    if (
      place.typed === '' &&
      !context.explicit &&
      place.kind === 'unit' &&
      !/\s$/.test(text.slice(0, context.pos))
    )
      return null;
    return offersFor(place, await optionsFor(place, words));
  };

type Offer = Completion & { also?: string };

/**
 * What is shown while this word is typed on is there at once: an editor that asks anew after each letter takes no offer
 * meanwhile, and a Tab right behind a letter leaves the entry half typed.
 */
const offersFor = (place: CompletionPlace, options: Offer[]): CompletionResult | null => {
  const found = ranked(place.typed, options);
  if (found.length === 0 || (found.length === 1 && found[0]!.label === place.typed)) return null;
  return {
    from: place.from,
    options: found,
    filter: false,
    update: (_shown, _from, _to, { state, pos }) => {
      const now = completionPlace(state.doc.toString(), pos);
      const isOn = now?.kind === place.kind && now.from === place.from && now.typed !== '';
      return isOn ? offersFor(now, options) : null;
    },
  };
};

const optionsFor = async (place: CompletionPlace, words: SheetWords): Promise<Offer[]> => {
  if (place.kind === 'unit') return words.units().map((symbol) => ({ label: symbol, type: 'unit' }));
  if (place.kind === 'output') {
    return (await words.partsOf(place.of)).map(({ name, label }) => ({
      label: name,
      detail: label,
      also: label,
      type: 'name',
    }));
  }
  const functions = [...signaturesOf(await words.library()).values()];
  return [
    ...words.names().map(({ name, label }) => ({ label: name, detail: label, also: label, type: 'name' })),
    ...functions.map((fn) => ({
      label: fn.name,
      apply: `${fn.name}(`,
      detail: `(${fn.takes.map((argument) => argument.name).join('; ')})`,
      info: fn.purpose,
      type: 'function',
    })),
  ];
};
