import type { Library } from '../../engine/rows/library.ts';
import { type Command, isRunnable } from '../state/command.ts';
import type { SheetContext } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import { putKind } from '../state/put-kind.ts';
import { cellOfRow } from '../state/row-key.ts';
import type { Findable } from './match.ts';

const ofCommands = (commands: readonly Command[]): Findable[] =>
  commands
    .filter(isRunnable)
    .filter(({ can, id }) => id !== 'sheet.find' && can?.() !== false)
    .map((command) => ({
      id: command.id,
      group: command.group,
      label: command.label,
      run: command.run,
      ...(command.keys && { beside: command.keys[0]! }),
      ...(command.also && { also: command.also }),
    }));

const ofLines = ({ sheet, show, goTo }: SheetContext): Findable[] =>
  sheet.state.order.flatMap((id) => {
    const line = sheet.line(id);
    if (!line) return [];
    const number = sheet.numberOf(id);
    const figure = standingFigure(line.result?.outputs.value ?? line.result?.outputs.mean);
    const output = line.result?.outputs.value ? 'value' : 'mean';
    const title = line.record.role === 'remark' ? (line.record.note ?? '') : sheet.titleOf(id);
    return [
      {
        id: `to.${id}`,
        group: 'Lines',
        label: number === undefined ? title : `${number} ${title}`,
        ...(line.record.name && { name: line.record.name }),
        also: `${title} ${line.record.name ?? ''} ${line.record.label ?? ''}`,
        beside: figure ? show.output(id, output).value(figure) : (line.record.name ?? ''),
        run: () => goTo(id),
      },
    ];
  });

const ofLibrary = (context: SheetContext, library: Library | undefined): Findable[] =>
  [...(library?.kinds.values() ?? [])].map((kind) => ({
    id: `put.${kind.key}`,
    group: 'Put in from the library',
    label: kind.title,
    beside: kind.purpose,
    also: `${kind.group} ${kind.key} library cell`,
    run: () => {
      const { sheet, cursor } = context;
      const place = cursor.place();
      const after = place ? cellOfRow(place.row) : (sheet.state.order.at(-1) ?? null);
      putKind(context, after, kind);
    },
  }));

/** Everything that can be found from a sheet. */
export const findables = (
  context: SheetContext,
  commands: readonly Command[],
  library: Library | undefined,
): Findable[] => {
  // Whoever looks for a word looks for the work first, and for how the page looks last.
  const look = ({ group }: Command) => group === 'Look';
  return [
    ...ofCommands(commands.filter((command) => !look(command))),
    ...ofLines(context),
    ...ofLibrary(context, library),
    ...ofCommands(commands.filter(look)),
  ];
};
