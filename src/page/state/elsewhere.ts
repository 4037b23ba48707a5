import { createSignal } from 'solid-js';

/** What is being done to lines on other devices, in words, by cell. */
export const createElsewhere = () => {
  const [words, set] = createSignal<ReadonlyMap<string, string>>(new Map());
  return { of: (cell: string): string | undefined => words().get(cell), set };
};
