import type { ChoiceTable } from '../record/cell.ts';

const table: ChoiceTable = {
  title: 'Why a new part differs from its original',
  rows: [
    { key: 'partner-cut', name: 'made to a partner that was cut clean', columns: {} },
    { key: 'wear-made-up', name: 'what wore off is made up again', columns: {} },
    { key: 'bought-size', name: 'the nearest size that can be bought', columns: {} },
    { key: 'stronger', name: 'made stronger', columns: {} },
    { key: 'more-oil', name: 'more oil, or better placed', columns: {} },
    { key: 'fault-mended', name: 'a fault of the original put right', columns: {} },
    { key: 'way-of-making', name: 'another way of making it', columns: {} },
  ],
};

export default table;
