import { nextAsked, sayRight, takeOffer } from '../state/answer.ts';
import type { Command } from '../state/command.ts';
import type { SheetContext } from '../state/context.ts';
import { OFFER_KEY, RIGHT_KEY } from '../state/keys.ts';
import { cellOfRow } from '../state/row-key.ts';

/** Answers to the question about the entry of the line under the cursor, and the way to the next one. */
export const slipCommands = (context: SheetContext): Command[] => {
  const { sheet, cursor, notices, goTo } = context;
  const cell = () => {
    const place = cursor.place();
    return place && cellOfRow(place.row);
  };
  const first = () => sheet.line(cell() ?? '')?.result?.slips[0];
  return [
    {
      id: 'line.take-offer',
      label: 'Take what a question about the entry offers',
      group: 'This line',
      keys: [OFFER_KEY],
      heard: 'page',
      also: 'slip accept likely',
      can: () => first()?.offer !== undefined,
      run: () => {
        takeOffer(sheet, cell()!, first()!);
        notices.say('Put right. Ctrl+Z takes it back.');
      },
    },
    {
      id: 'line.say-right',
      label: 'Answer a question about the entry: it is right',
      group: 'This line',
      keys: [RIGHT_KEY],
      heard: 'page',
      also: 'slip dismiss keep',
      can: () => first() !== undefined,
      run: () => {
        sayRight(sheet, cell()!, first()!);
        notices.say('Kept as it is, and not asked again while the text stays.');
      },
    },
    {
      id: 'sheet.next-question',
      label: 'Go to the next entry that is asked about',
      group: 'The sheet',
      also: 'slip question doubt',
      can: () => nextAsked(sheet, cell()) !== undefined,
      run: () => goTo(nextAsked(sheet, cell())!),
    },
  ];
};
