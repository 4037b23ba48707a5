import { problem } from '../../../shared/problem.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { cellNameProblem } from '../../language/names.ts';
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
  const named = record.name === undefined ? undefined : cellNameProblem(record.name);
  if (named) cell.problems.push({ ...named, field: 'name' });
  if (scope.isDuplicate(record)) {
    cell.problems.push(
      problem(
        'unknown-name',
        `Another cell is called \`${record.name}\` too, and no formula can tell which is meant. Rename one of them.`,
        { field: 'name' },
      ),
    );
  }
  return cell;
}
