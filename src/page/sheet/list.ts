import type { Command } from '../state/command.ts';
import type { SheetContext } from '../state/context.ts';
import type { Tools } from '../state/tools.ts';
import { chosenCommands } from './chosen-list.ts';
import { lineCommands } from './line-list.ts';
import { lookCommands } from './look-list.ts';
import { movingKeys } from './moving-list.ts';
import { sheetCommands } from './sheet-list.ts';
import { slipCommands } from './slip-list.ts';

/** Every command of the sheet and every key it hears: the one list the finder, the keys and their listing read. */
export const commandList = (context: SheetContext, tools: Tools): readonly Command[] => [
  ...lineCommands(context, tools),
  ...slipCommands(context),
  ...chosenCommands(context, tools),
  ...sheetCommands(context, tools),
  ...lookCommands(tools),
  ...movingKeys,
];
