import { createMemo, Show, untrack } from 'solid-js';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { roleWord } from '../../../shared/sheet/role-words.ts';
import { inUsualUnits, writtenOut, writtenTolerance } from '../kit/decimal-mark.ts';
import { say } from '../kit/words.ts';
import { isReadOffPart } from '../state/as-cut.ts';
import { isBlankLine } from '../state/asked.ts';
import { useSheet } from '../state/context.ts';
import { promptOf } from '../state/prompts.ts';
import { lineRow } from '../state/row-key.ts';
import { titled } from '../state/titled.ts';
import { AsCutEntry } from './as-cut-entry.tsx';
import { AsideNote } from './aside-note.tsx';
import { CheckCell } from './check-cell.tsx';
import { EntryCell } from './entry-cell.tsx';
import { GridCell } from './grid-cell.tsx';
import { GridRow } from './grid-row.tsx';
import { LikeNote } from './like-note.tsx';
import { LimitsCell } from './limits-cell.tsx';
import { LineNote } from './line-note.tsx';
import { NumberCell } from './number-cell.tsx';
import { SlipRemarks } from './slip-remark.tsx';
import { UnfoldedRow } from './unfolded-row.tsx';
import { ValueCell } from './value-cell.tsx';

/** Label, name and trade word of a line. */
const NameCell = (props: { cell: string; record: CellRecord }) => {
  const { cursor } = useSheet();
  return (
    <GridCell row={lineRow(props.cell)} column="name" unfolds>
      <span
        class="role float-right ml-2 caption whitespace-nowrap"
        classList={{ 'text-ink lined-current px-1': Boolean(props.record.issued) }}
      >
        {roleWord(props.record)}
      </span>
      <span class="label">
        {(props.record.label && say(props.record.label)) || <span class="caption">no label</span>}
      </span>
      <Show when={props.record.name}>
        <span class="named ml-1 caption">{props.record.name}</span>
        <LikeNote name={props.record.name!} />
      </Show>
      <AsideNote record={props.record} />
      <LineNote
        note={props.record.note}
        shown={isBlankLine(props.record) && !cursor.isOpen(lineRow(props.cell))}
      />
    </GridCell>
  );
};

export const PlainLine = (props: { cell: string }) => {
  const { sheet } = useSheet();
  // Kept: what is typed in a line is committed as the line goes, deleted by somebody else.
  const own = untrack(() => sheet.line(props.cell)!);
  const line = () => sheet.line(props.cell) ?? own;
  let kept = untrack(() => own.record);
  const record = (): CellRecord => {
    kept = line().record ?? kept;
    return kept;
  };
  /** A set of readings reports its mean first. */
  const main = createMemo(() => {
    const outputs = line().shape?.outputs;
    return outputs && !outputs.value && outputs.mean ? 'mean' : 'value';
  });
  /** Nothing is cut before its size is known. */
  const takesReadings = createMemo(
    () => (!isBlankLine(record()) || record().measured !== undefined) && isReadOffPart(sheet, record()),
  );
  /** A class that is another line's: what it is, and whose. */
  const taken = () => `${line().shape!.echoes.tolerance} (${record().tolerance!.replace(/^=\s*/, '')})`;
  const beside = () => {
    const parts = [
      record().tolerance &&
        (line().shape?.echoes.tolerance ? taken() : writtenTolerance(record().tolerance!)),
      line().shape?.echoes.entry && `= ${writtenOut(line().shape!.echoes.entry!)}`,
      record().gauge && `by ${titled(sheet, record().gauge!)}`,
      record().issued && `released to cut at ${writtenOut(record().issued!)}`,
    ];
    return inUsualUnits(parts.filter(Boolean).join(' · '), sheet.state.units.tenth);
  };
  return (
    <>
      <GridRow
        row={lineRow(props.cell)}
        cell={props.cell}
        class={isBlankLine(record()) && sheet.asideOf(record()) === undefined ? 'to-fill' : ''}
      >
        <NumberCell row={lineRow(props.cell)} cell={props.cell} />
        <NameCell cell={props.cell} record={record()} />
        <EntryCell
          row={lineRow(props.cell)}
          spot={{ cell: props.cell, field: 'entry', kind: 'entry', quantity: record().quantity }}
          text={record().entry}
          label={`Entry of ${sheet.titleOf(props.cell)}`}
          blank={promptOf(record())}
          example={record().example}
          beside={
            <>
              <Show when={beside()}>
                <span class="beside block caption">{beside()}</span>
              </Show>
              <Show when={takesReadings()}>
                <AsCutEntry
                  cell={props.cell}
                  text={record().measured?.entry}
                  quantity={sheet.shape(props.cell, main())?.quantity ?? record().quantity}
                />
              </Show>
              <SlipRemarks cell={props.cell} />
            </>
          }
        />
        <ValueCell row={lineRow(props.cell)} cell={props.cell} output={main()} />
        <LimitsCell row={lineRow(props.cell)} cell={props.cell} output={main()} />
        <CheckCell row={lineRow(props.cell)} cell={props.cell} output={main()} />
      </GridRow>
      <UnfoldedRow row={lineRow(props.cell)} />
    </>
  );
};
