import { addressOfBook, addressOfSheet, go } from '../kit/router.ts';
import { printSheet } from '../print/load.ts';
import type { Command } from '../state/command.ts';
import type { SheetContext } from '../state/context.ts';
import { focusWork } from '../state/focus-work.ts';
import { saveToFile } from '../state/save-file.ts';
import { switchLength } from '../state/switch-length.ts';
import type { Tools } from '../state/tools.ts';
import { askedOf, readingsAsked, toNextEntry } from './next-entry.tsx';

/** Commands on the sheet as a whole. */
export const sheetCommands = (context: SheetContext, tools: Tools): Command[] => {
  const { sheet, notices, goTo } = context;
  const group = 'The sheet';
  const again = (redo: boolean) => {
    const label = redo ? sheet.document.redo() : sheet.document.undo();
    notices.say(
      label
        ? `${redo ? 'Done again' : 'Taken back'}: ${label}.`
        : redo
          ? 'Nothing to do again.'
          : 'Nothing to take back.',
    );
    queueMicrotask(() => focusWork(context));
  };
  return [
    {
      id: 'sheet.find',
      label: 'Find a command or a line',
      group,
      keys: ['F9'],
      heard: 'always',
      run: () => tools.show('finder'),
    },
    {
      id: 'sheet.keys',
      label: 'Show the keys',
      group,
      keys: ['?'],
      heard: 'page',
      run: () => tools.show('keys'),
    },
    {
      id: 'sheet.undo',
      label: 'Undo',
      group,
      keys: ['Ctrl+Z'],
      heard: 'page',
      also: 'take back',
      run: () => again(false),
    },
    {
      id: 'sheet.redo',
      label: 'Redo',
      group,
      keys: ['Ctrl+Shift+Z', 'Ctrl+Y'],
      heard: 'page',
      also: 'do again',
      run: () => again(true),
    },
    {
      id: 'sheet.first',
      label: 'Go to the first check that does not hold',
      group,
      can: () => sheet.counts().first !== undefined,
      run: () => goTo(sheet.counts().first!.cell, sheet.counts().first!.output),
    },
    {
      id: 'sheet.next-entry',
      label: 'Go to the next entry to make, then to the next size to read',
      group,
      keys: ['F8'],
      heard: 'always',
      also: 'blank fill',
      can: () => {
        const { must, may } = askedOf(context);
        return must.length + may.length > 0 || readingsAsked(context).length > 0;
      },
      run: () => toNextEntry(context),
    },
    {
      id: 'sheet.bench',
      label: 'Take readings at the machine',
      group,
      also: 'phone keypad measure enter',
      run: () => go(addressOfSheet(tools.sheetId, 'bench')),
    },
    {
      id: 'sheet.chain',
      label: 'Draw the chain: what feeds what',
      group,
      also: 'graph diagram network svg',
      run: () => go(addressOfSheet(tools.sheetId, 'chain')),
    },
    {
      id: 'sheet.hold',
      label: 'Hold the figures as they stand, to compare with',
      group,
      also: 'baseline before after',
      can: () => sheet.state.rev > 0,
      run: () => {
        tools.held.hold();
        notices.say('Held. Every line that changes from now on shows by how much.');
      },
    },
    {
      id: 'sheet.drop',
      label: 'Drop the held figures',
      group,
      can: () => tools.held.held() !== undefined,
      run: () => tools.held.drop(),
    },
    {
      id: 'sheet.inch',
      label: 'Show lengths in inches',
      group,
      can: () => sheet.state.units.length !== 'in',
      run: () => void switchLength({ sheet, notices }, 'in'),
    },
    {
      id: 'sheet.mm',
      label: 'Show lengths in millimetres',
      group,
      can: () => sheet.state.units.length !== 'mm',
      run: () => void switchLength({ sheet, notices }, 'mm'),
    },
    {
      id: 'sheet.both',
      label: 'Show inches and millimetres side by side',
      group,
      also: 'both systems',
      can: () => sheet.state.units.both !== true,
      run: () => sheet.document.setUnits({ both: true }),
    },
    {
      id: 'sheet.one',
      label: 'Show one system of units only',
      group,
      can: () => sheet.state.units.both === true,
      run: () => sheet.document.setUnits({ both: undefined }),
    },
    {
      id: 'sheet.save',
      label: 'Save to a file',
      group,
      also: 'export json',
      run: () => void saveToFile(sheet.document),
    },
    {
      id: 'sheet.share',
      label: 'Share the sheet',
      group,
      also: 'hand on send code link qr export csv table spreadsheet workbook pdf',
      run: () => tools.show('share'),
    },
    {
      id: 'sheet.history',
      label: 'Look into the history of the sheet',
      group,
      also: 'revisions earlier states restore return keep look back',
      run: () => tools.show('history'),
    },
    {
      id: 'sheet.save-template',
      label: 'Save the job as a template',
      group,
      can: () => !sheet.document.template(),
      run: () => tools.show('save-template'),
    },
    {
      id: 'sheet.template',
      label: 'Compare the job with its template',
      group,
      also: 'changes departures locked update',
      can: () => sheet.document.from() !== undefined,
      run: () => tools.show('template'),
    },
    { id: 'sheet.print', label: 'Print', group, also: 'paper', run: () => printSheet(sheet.engine) },
    { id: 'sheet.jobs', label: 'Go to all jobs', group, also: 'home list', run: () => go('#/') },
    {
      id: 'sheet.book',
      label: 'Look into the cell book',
      group,
      also: 'help library',
      run: () => go(addressOfBook()),
    },
  ];
};
