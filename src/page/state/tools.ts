import { createContext, createSignal, useContext } from 'solid-js';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { createHeld, type Held } from './held.ts';
import { createSelection, type Selection } from './selection.ts';
import type { Sheet } from './sheet.ts';

/** What can lie over the sheet, one at a time. */
export type Overlay = 'finder' | 'keys' | 'preferences' | 'share' | 'history' | 'template' | 'save-template';

/** What goes with one open sheet beside its lines: the chosen lines, the held figures, and what lies over it. */
export const createTools = (sheet: Sheet, opened: OpenSheet, shop: Shop) => {
  const { id } = opened;
  const [overlay, setOverlay] = createSignal<Overlay>();
  return {
    sheetId: id,
    opened,
    shop,
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
