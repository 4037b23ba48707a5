import { createSignal } from 'solid-js';

/** Where a new line is being put in: behind a cell, at the end (`null`), or nowhere. */
export const createAdding = () => {
  const [after, setAfter] = createSignal<string | null>();
  return { after, begin: (cell: string | null) => setAfter(() => cell), end: () => setAfter(undefined) };
};
