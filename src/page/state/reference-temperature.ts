import { NO_HANDBOOK, parseEntry } from '../../language/parse.ts';
import { preferences } from '../kit/preferences.ts';
import { sayMessage } from '../kit/say-message.ts';
import type { Sheet } from './sheet.ts';

/**
 * Takes the temperature that the sizes of the sheet hold at, with its unit: a bare figure would change with the sheet's.
 * @returns what is wrong with it, where it cannot be read; the sheet then keeps what it had.
 */
export const takeReference = (sheet: Sheet, text: string): string | undefined => {
  const { problems, committed } = parseEntry(text, {
    quantity: 'temperature',
    units: { ...sheet.state.units },
    handbook: NO_HANDBOOK,
    decimal: preferences().decimal,
  });
  const [problem] = problems;
  if (problem && text !== '') return sayMessage(problem.message);
  sheet.document.setTitle('referenceTemperature', text && committed);
  return undefined;
};
