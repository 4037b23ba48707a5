import { problem } from '../../../shared/problem.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { AssembledCell } from './assembled.ts';
import { CellBuilder } from './builder.ts';
import { assembleLibraryCell, type Surroundings } from './library-cell.ts';
import { assemblePlain } from './plain.ts';
import type { SheetScope } from './scope.ts';

/** Turns one cell into rows. */
export function assemble(record: CellRecord, scope: SheetScope, around: Surroundings): AssembledCell {
  const cell =
    record.role === 'section' || record.role === 'remark'
      ? new CellBuilder(record.id, scope.called(record.id)).cell
      : record.role === 'cell'
        ? assembleLibraryCell(record, scope, around)
        : assemblePlain(record, scope, around.reference);
  // Another cell may come to be called the same, and be the one that counts.
  if (record.name) cell.mentions.add(record.name);
  if (scope.isDuplicate(record)) {
    cell.problems.push(
      problem(
        'unknown-name',
        `Another cell is called \`${record.name}\` too; formulas take the first. Rename one of them.`,
        { field: 'name' },
      ),
    );
  }
  return cell;
}
