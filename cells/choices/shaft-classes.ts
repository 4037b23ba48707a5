import type { ChoiceTable } from '../cell.ts';
import { classRows } from '../tables/tolerance-classes.ts';

const table: ChoiceTable = { title: 'Shaft classes of ISO 286', rows: classRows('shaft') };

export default table;
