import type { ChoiceTable } from '../record/cell.ts';
import { woodruffNumbers } from '../tables/keys.ts';

/** Named with width and disc, as they are bought. */
const table: ChoiceTable = {
  title: 'Woodruff keys (B17.2)',
  rows: [...woodruffNumbers].map((number) => {
    const [, width = '', eighths = ''] = /^(\d+?)(\d{2}(?:\.5)?)$/.exec(number) ?? [];
    return {
      key: number,
      name: `No. ${number}: ${width}/32 in wide, disc ${Number(eighths)}/8 in`,
      columns: {},
    };
  }),
};

export default table;
