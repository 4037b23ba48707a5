import { createSignal } from 'solid-js';
import type { Library } from '../../engine/client-types.ts';

const [library, setLibrary] = createSignal<Library>();
let asked: Promise<Library> | undefined;

/** The cell library; undefined until its chunk is there. It is not needed to read a sheet's plain lines. */
export const useLibrary = (): (() => Library | undefined) => {
  void loadLibrary();
  return library;
};

export const loadLibrary = (): Promise<Library> => {
  asked ??= import('../../../cells/catalogue.ts').then((module) => {
    setLibrary(module.library);
    return module.library;
  });
  return asked;
};
