import type { CellKind } from '../../../cells/record/cell.ts';
import { type Equipment, equipmentOf } from '../../document/sharing/own-equipment.ts';
import type { Shop } from '../../document/storage/shop.ts';
import type { Sheet } from '../state/sheet.ts';

/** What this shop keeps of a kind, by what it is: only such of which the choice is told. */
export const offersOf = async (shop: Shop, kind: string, input: string): Promise<Equipment[]> =>
  (await equipmentOf(shop)).filter((one) => one.kind === kind && one.inputs[input] !== undefined);

/** Fills a line in with what the shop keeps: no figure of another piece stays beside it. */
export const takeOwn = (sheet: Sheet, cell: string, kind: CellKind, one: Equipment): void => {
  const names = kind.inputs.flatMap(({ name, ofShop }) => (ofShop ? [name] : []));
  sheet.document.batch(`${one.label || kind.title} of this shop`, () => {
    for (const name of names) sheet.document.setField(cell, `inputs.${name}`, one.inputs[name] ?? '');
    return cell;
  });
};
