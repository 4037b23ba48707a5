import { createContext, createSignal, useContext } from 'solid-js';
import { createHeld, type Held } from '../held/held.ts';
import { createSelection, type Selection } from '../selection/selection.ts';
import type { Sheet } from '../state/sheet.ts';

/** What can lie over the sheet, one at a time. */
export type Overlay = 'finder' | 'keys' | 'preferences';

/** What goes with one open sheet beside its lines: the chosen lines, the held figures, and what lies over it. */
export const createTools = (sheet: Sheet, id: string) => {
  const [overlay, setOverlay] = createSignal<Overlay>();
  return {
    sheetId: id,
    selection: createSelection(() => sheet.state.order) as Selection,
    held: createHeld(sheet, id) as Held,
    overlay,
    show: (name: Overlay) => setOverlay(name),
    hide: () => setOverlay(undefined),
  };
};

export type Tools = ReturnType<typeof createTools>;

const Context = createContext<Tools>();

export const ToolsProvider = Context.Provider;

export const useTools = (): Tools => {
  const tools = useContext(Context);
  if (!tools) throw new Error('useTools is called outside a sheet.');
  return tools;
};
