import type { ChoiceTable } from '../cell.ts';
import { classRows } from '../tables/tolerance-classes.ts';

const table: ChoiceTable = { title: 'Hole classes of ISO 286', rows: classRows('hole') };

export default table;
