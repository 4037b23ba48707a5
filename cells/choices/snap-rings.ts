import type { ChoiceTable } from '../record/cell.ts';
import { snapRings } from '../tables/snap-rings.ts';

const table: ChoiceTable = {
  title: 'Snap rings (DIN 471, DIN 472)',
  rows: [...snapRings.keys()].map((key) => {
    const [where, size] = key.split('-');
    return {
      key,
      name: where === 'shaft' ? `shaft of ${size} mm (DIN 471)` : `bore of ${size} mm (DIN 472)`,
      columns: {},
    };
  }),
};

export default table;
