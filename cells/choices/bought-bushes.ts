import type { ChoiceTable } from '../record/cell.ts';

/** Bushes bought to a standard: its limits are in the functions of bought bushes. */
const table: ChoiceTable = {
  title: 'Bushes bought to a standard',
  rows: [
    { key: 'wrapped', name: 'wrapped from strip, ISO 3547 (DIN 1494)', columns: {} },
    { key: 'turned', name: 'turned copper alloy, ISO 4379', columns: {} },
  ],
};

export default table;
