import { formatQuantity } from '../../../shared/quantities/figures.ts';
import { parseUnit, type Unit } from '../../../shared/units/units.ts';
import type { CheckSaid, WindowEnd, WindowFound, WindowPiece } from './answer.ts';

/** A value of the input in the unit and places of its window. */
export const valueText = (found: Pick<WindowFound, 'unit' | 'places'>, si: number, comma = false): string => {
  const unit = parseUnit(found.unit);
  return 'symbol' in unit
    ? formatQuantity(si, unit as Unit, { decimals: found.places, comma })
    : si.toFixed(found.places);
};

/** `2.2511 in to 2.2516 in`. */
export const pieceText = (found: WindowFound, { low, high }: WindowPiece, comma = false): string =>
  low.at === high.at
    ? `${valueText(found, low.at, comma)} alone`
    : `${valueText(found, low.at, comma)} to ${valueText(found, high.at, comma)}`;

/** On which side of an end metal is still on, where the line of the input tells. */
const sideText = ({ metalOn }: WindowFound, side: 'low' | 'high'): string =>
  metalOn === undefined ? '' : metalOn === side ? ', where metal is still on' : ', where metal is gone';

/** What closes an end: `Above 2.2516 in, where metal is still on, these no longer hold:`. */
export const endText = (found: WindowFound, side: 'low' | 'high', end: WindowEnd, comma = false): string => {
  const at = valueText(found, end.at, comma);
  return end.closedBy.length === 0
    ? `No check was met ${side === 'low' ? 'down' : 'up'} to ${at}, as far as was looked.`
    : `${side === 'low' ? 'Below' : 'Above'} ${at}${sideText(found, side)}, no longer:`;
};

/** What a check says, without what must hold for a cell twice. */
export const saidText = (said: CheckSaid, title: string): string =>
  said.words === '' ? title : `${title}: ${said.words}`;
