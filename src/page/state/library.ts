import { createMemo, createRoot, createSignal } from 'solid-js';
import type { Library } from '../../engine/library.ts';
import { preferences } from '../preferences/preferences.ts';
import { sayKind } from '../preferences/words.ts';

const [library, setLibrary] = createSignal<Library>();
let asked: Promise<Library> | undefined;

/** The library in the trade words the user prefers. */
const shown = createRoot(() =>
  createMemo(() => {
    const found = library();
    const { bush, play } = preferences();
    if (!found || (bush === 'as written' && play === 'as written')) return found;
    return { ...found, kinds: new Map([...found.kinds].map(([key, kind]) => [key, sayKind(kind)])) };
  }),
);

/** The cell library; undefined until its chunk is there. It is not needed to read a sheet's plain lines. */
export const useLibrary = (): (() => Library | undefined) => {
  void loadLibrary();
  return shown;
};

export const loadLibrary = (): Promise<Library> => {
  asked ??= import('../../../cells/catalogue.ts').then((module) => {
    setLibrary(module.library);
    return module.library;
  });
  return asked;
};
