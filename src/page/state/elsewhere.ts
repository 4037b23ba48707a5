import { createSignal } from 'solid-js';

/** Where this device is on the sheet, to be told to the others. */
export interface Here {
  /** Id of the line; absent for the title block. */
  line?: string;
  /** Path of the field being typed in. */
  typing?: string;
}

/** What is being done to lines on other devices, in words, by cell; and what this one does away from the grid. */
export const createElsewhere = () => {
  const [words, set] = createSignal<ReadonlyMap<string, string>>(new Map());
  const [here, at] = createSignal<Here | undefined>(undefined, {
    equals: (a, b) => a?.line === b?.line && a?.typing === b?.typing && !a === !b,
  });
  return {
    of: (cell: string): string | undefined => words().get(cell),
    set,
    /** At the machine: what is read there. */
    here,
    at,
  };
};
