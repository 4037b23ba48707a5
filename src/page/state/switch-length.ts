import type { LengthUnit } from '../../document/sharing/own-units.ts';
import type { SheetContext } from './context.ts';

/** Shows the sheet in other lengths. Where it is shared, each device has its own. */
export const switchLength = (
  context: Pick<SheetContext, 'sheet' | 'notices'>,
  length: LengthUnit,
): Promise<void> | void =>
  context.sheet.lengths
    ? context.sheet.lengths(length)
    : import('./other-lengths.ts')
        .then(({ toOtherLengths }) => toOtherLengths(context, length))
        .catch(() => context.notices.say('What reads lengths could not be fetched. Nothing was changed.'));
