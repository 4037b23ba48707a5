import { createEffect, createSignal, on, untrack } from 'solid-js';

/** What was keyed in at a place that was left before it was taken. */
export interface LeftOpen<P> {
  dimension: string;
  place: P;
  text: string;
}

export interface KeyedAt<P> {
  /** What is being read, the same text as long as it is the same. */
  dimension: () => string;
  /** Where the reading that is due goes. */
  place: () => P;
  /** Changes whenever another reading is due. */
  due: () => string;
  /** Digits the reading that is due probably begins with. */
  offer: () => string;
}

/**
 * What is being keyed in. It begins with the digits offered; what was struck besides them stays until it is taken or cleared:
 * through figures that come in, a reading that somebody else enters, another place chosen for it, another dimension.
 */
export const createKeyedText = <P>(at: KeyedAt<P>) => {
  const [text, setText] = createSignal('');
  const [left, setLeft] = createSignal<ReadonlyArray<LeftOpen<P>>>([]);
  let offered = '';
  /** Of the dimension at hand: by the time it has been left, another one is. */
  let place = untrack(at.place);
  const isKeyed = () => text().trim() !== '' && text() !== offered;
  const begin = (kept?: string) => {
    offered = at.offer();
    setText(kept ?? offered);
  };
  /** What is keyed in stays with the dimension that is left; @returns what stayed with the one that is come to. */
  const change = (from: string, to: string): string | undefined => {
    const own = isKeyed() ? [{ dimension: from, place, text: text() }] : [];
    const all = [...left().filter((one) => one.dimension !== from), ...own];
    setLeft(all.filter((one) => one.dimension !== to));
    return all.find((one) => one.dimension === to)?.text;
  };
  createEffect(
    on([at.dimension, at.due, at.offer], ([dimension], before) => {
      untrack(() => {
        const from = before?.[0];
        if (from !== undefined && from !== dimension) begin(change(from, dimension));
        else if (isKeyed()) offered = at.offer();
        else begin();
        place = at.place();
      });
    }),
  );
  return {
    text,
    setText,
    /** More than the digits offered. */
    isKeyed,
    /** Of other dimensions, oldest first. */
    left,
    /** Where what is keyed in goes, known also as the view goes. */
    place: () => place,
    /** It has been taken: the next one begins. */
    taken: () => begin(),
  };
};
