import { Show } from 'solid-js';
import type { CellRecord, Way } from '../../../shared/sheet/format.ts';
import { TextField } from '../kit/text-field.tsx';
import { useSheet } from '../state/context.ts';
import type { Sheet } from '../state/sheet.ts';

const HOW = 'What the ways lead to, a colon, and which of them this is: bush cut: before pressing';

const written = (way: Way | undefined): string | undefined =>
  way?.to ? `${way.to}: ${way.by ?? ''}` : undefined;

/** Of a heading, its lines too: down to the next heading. */
const linesUnder = (sheet: Sheet, cell: string): string[] => {
  const { order } = sheet.state;
  const at = order.indexOf(cell);
  if (sheet.line(cell)?.record.role !== 'section') return [cell];
  const next = order.findIndex((id, k) => k > at && sheet.line(id)?.record.role === 'section');
  return order.slice(at, next < 0 ? undefined : next);
};

/** Says that a line, or all lines under a heading, are one of several ways to the same end. */
export const WayField = (props: { cell: string; record: CellRecord }) => {
  const { sheet } = useSheet();
  const commit = (text: string): string | undefined => {
    const [, to, by] = /^([^:]+):(.+)$/.exec(text) ?? [];
    if (text !== '' && (!to?.trim() || !by?.trim())) return `${HOW}.`;
    const way = to && by ? { to: to.trim(), by: by.trim() } : undefined;
    sheet.document.batch('way', () => {
      for (const id of linesUnder(sheet, props.cell)) sheet.document.setField(id, 'way', way);
    });
    return undefined;
  };
  const way = () => props.record.way;
  const fork = () => sheet.forks().find(({ to }) => to === way()?.to);
  return (
    <>
      <TextField
        label={
          props.record.role === 'section' ? 'One of several ways (all lines under it)' : 'One of several ways'
        }
        value={written(way())}
        aside={{ sheet: sheet.document.id, cell: props.cell, field: 'way' }}
        placeholder="bush cut: before pressing"
        hint={way() ? undefined : HOW}
        onCommit={commit}
      />
      <Show when={fork() && fork()!.taken !== way()!.by}>
        <button type="button" onClick={() => sheet.document.setWay(way()!.to, way()!.by)}>
          Take this way
        </button>
      </Show>
    </>
  );
};
