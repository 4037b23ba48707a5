import type { ChoiceTable } from '../record/cell.ts';
import { classRows } from '../tables/iso286/tolerance-classes.ts';

const table: ChoiceTable = { title: 'Shaft classes of ISO 286', rows: classRows('shaft') };

export default table;
