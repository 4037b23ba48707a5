import { createContext, useContext } from 'solid-js';
import type { createAdding } from './adding.ts';
import type { Chain } from './chain.ts';
import type { Cursor } from './cursor.ts';
import type { createLocked } from './locked.ts';
import type { Notices } from './notices.ts';
import type { Sheet } from './sheet.ts';
import type { Show } from './show.ts';

export interface SheetContext {
  sheet: Sheet;
  cursor: Cursor;
  notices: Notices;
  chain: Chain;
  adding: ReturnType<typeof createAdding>;
  locked: ReturnType<typeof createLocked>;
  show: Show;
  /** Moves the cursor to a cell's line, scrolls to it and unfolds it. */
  goTo: (cell: string, output?: string) => void;
}

const Context = createContext<SheetContext>();

export const SheetProvider = Context.Provider;

export const useSheet = (): SheetContext => {
  const context = useContext(Context);
  if (!context) throw new Error('useSheet is called outside a sheet.');
  return context;
};
