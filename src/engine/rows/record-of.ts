import { dimension, sameDimension } from '../../../shared/dimension.ts';
import { problem } from '../../../shared/problem.ts';
import type { Literal } from '../../language/syntax/syntax.ts';
import { describeDimension } from '../../language/syntax/wording.ts';
import type { CellBuilder } from './builder.ts';
import type { SheetScope } from './scope.ts';

const LENGTH = dimension(1);

/** Named, but not to be had: its problem is said. */
export type Lost = 'lost';

/** Id of the gauge cell the readings name. Every gauge of the library measures lengths: its error is no error of a force. */
export function gaugeOf(
  build: CellBuilder,
  scope: SheetScope,
  context: { gauge?: string | undefined; field: string },
  stations: readonly Literal[][],
): string | Lost | undefined {
  const field = `${context.field === 'entry' ? '' : `${context.field}.`}gauge`;
  const used = recordOf(build, scope, context.gauge, 'gauge', field);
  const other = stations.flat().find(({ dimension }) => !sameDimension(dimension, LENGTH));
  if (used === undefined || used === 'lost' || !other) return used;
  build.cell.problems.push(
    problem(
      'dimension',
      `\`${context.gauge?.trim()}\` measures lengths, and ${other.text} is ${describeDimension(other.dimension, other.point)}: take the gauge away here, and write ± behind the reading.`,
      { field },
    ),
  );
  return 'lost';
}

/** Id of the cell of that kind which a field names. */
export function recordOf(
  build: CellBuilder,
  scope: SheetScope,
  name: string | undefined,
  kind: string,
  field: string,
): string | Lost | undefined {
  const wanted = name?.trim().replace(/^=\s*/, '');
  if (!wanted) return undefined;
  const found = scope.recordTaken(wanted, kind);
  const [from] = found.through;
  build.cell.mentions.add(from?.name ?? wanted);
  if (from) build.cell.feeds.add(from.id);
  if ('record' in found) return found.record.id;
  const said =
    'fault' in found
      ? found.fault.startsWith('There is no cell named')
        ? `There is no ${kind} cell named \`${wanted}\``
        : found.fault
      : `\`${scope.called(found.blank.record.id)}\` names no ${kind} yet`;
  build.cell.problems.push(
    problem('unknown-name', `${said}: choose one, or add a ${kind} cell of that name.`, { field }),
  );
  return 'lost';
}
