import { createMemo, For, Show, Suspense } from 'solid-js';
import type { CellInput, CellOutput } from '../../../cells/record/cell.ts';
import { ProblemNote } from '../entry/problem-note.tsx';
import { CareSign } from '../kit/care-sign.tsx';
import { CheckMark } from '../kit/check-mark.tsx';
import { leading, ORDER, standingOf } from '../kit/check-words.ts';
import { late } from '../kit/late.tsx';
import { say } from '../kit/words.ts';
import { isWanting } from '../state/asked.ts';
import { careOfLine } from '../state/care.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { lineRow } from '../state/row-key.ts';
import { AsideNote } from './aside-note.tsx';
import { FaceCell } from './face-cell.tsx';
import { GridCell } from './grid-cell.tsx';
import { GridRow, StillCell } from './grid-row.tsx';
import { InputLine } from './input-line.tsx';
import { InputStrip } from './input-strip.tsx';
import { LikeNote } from './like-note.tsx';
import { LineNote } from './line-note.tsx';
import { NumberCell } from './number-cell.tsx';
import { OutputLine } from './output-line.tsx';
import { SlipRemarks } from './slip-remark.tsx';
import { UnfoldedRow } from './unfolded-row.tsx';

const KindTop = late('What this cell is for', () => import('../unfolded/kind-top.tsx'));

/** A cell of the library: its heading, a line for every input, and the outputs of its face. */
export const LibraryLine = (props: { cell: string }) => {
  const { sheet, cursor } = useSheet();
  const library = useLibrary();
  const line = () => sheet.line(props.cell)!;
  const record = () => line().record;
  const kind = () => {
    const found = library()?.kinds.get(record().kind ?? '');
    // One that could not be fetched is asked for again when the engine has more to say of the line.
    if (!found) line().shape;
    return found;
  };
  const kindProblem = () => line().shape?.problems.find((problem) => problem.field === 'kind');
  /** Of all outputs, the verdict that most asks for a look. */
  const worst = createMemo(() => {
    const states = Object.values(line().shape?.outputs ?? {}).map((output) => leading(output.check).state);
    return ORDER.flatMap((standing) => states.filter((state) => standingOf(state) === standing)).at(0);
  });
  const open = () => cursor.isOpenCell(props.cell);
  /** Of a way that is not taken nothing is asked. */
  const wanting = (input: CellInput) => isWanting(record(), input) && sheet.asideOf(record()) === undefined;
  /** Folded, only what still has to be given stands in lines of its own. */
  const inputs = () => (kind()?.inputs ?? []).filter((input) => open() || wanting(input));
  /** An output that is held to limits, or was read off the part, keeps its line; the others stand on the face. */
  const ownLine = ({ name }: CellOutput) =>
    line().shape?.outputs[name]?.limits !== undefined || record().outputs?.[name] !== undefined;
  const outputs = () => (kind()?.outputs ?? []).filter((output) => open() || ownLine(output));
  const face = () =>
    (kind()?.outputs ?? []).filter((output) => (output.face || output.ofPart) && !ownLine(output));
  return (
    <>
      <GridRow row={lineRow(props.cell)} cell={props.cell} class={open() ? 'library' : 'library folded'}>
        <NumberCell row={lineRow(props.cell)} cell={props.cell} />
        <GridCell row={lineRow(props.cell)} column="name" unfolds span={open() ? 4 : 2}>
          <span class="role float-right ml-2 caption whitespace-nowrap">
            {kind()?.title ?? record().kind}
          </span>
          <span class="label font-bold">
            {(record().label && say(record().label!)) || kind()?.title || record().kind}
          </span>
          <Show when={!open() && careOfLine(sheet, library(), props.cell).length > 0}>
            {' '}
            <CareSign words="with cautions: unfold it" />
          </Show>
          <Show when={record().name}>
            <span class="named ml-1 caption">{record().name}</span>
            <LikeNote name={record().name!} />
          </Show>
          <AsideNote record={record()} />
          <LineNote note={record().note} shown={!open() && (kind()?.inputs ?? []).some(wanting)} />
          <Show when={!open() && kind()}>{(k) => <InputStrip cell={props.cell} kind={k()} />}</Show>
          <Show
            when={library()?.kinds.has(record().kind ?? '') !== false}
            fallback={
              <span class="caption">
                The library of this program has no cell “{record().kind}”. Its entries are kept.
              </span>
            }
          >
            <Show when={kindProblem()}>{(p) => <ProblemNote problem={p()} cell={props.cell} brief />}</Show>
          </Show>
          <SlipRemarks cell={props.cell} />
        </GridCell>
        <Show when={!open()}>
          <FaceCell cell={props.cell} outputs={face()} />
        </Show>
        <GridCell row={lineRow(props.cell)} column="check">
          <Show when={worst() && worst() !== 'no limits'}>
            <CheckMark state={worst()!} />
          </Show>
        </GridCell>
      </GridRow>
      <Show when={open() && kind()}>
        <GridRow cell={props.cell} class="unfolded top">
          <StillCell span={6}>
            <Suspense>
              <section aria-label={`${sheet.titleOf(props.cell)}, what it is for`}>
                <KindTop cell={props.cell} />
              </section>
            </Suspense>
          </StillCell>
        </GridRow>
      </Show>
      <For each={inputs()}>{(input) => <InputLine cell={props.cell} input={input} />}</For>
      <For each={outputs()}>{(output) => <OutputLine cell={props.cell} output={output} />}</For>
      <UnfoldedRow row={lineRow(props.cell)} open={open()} />
    </>
  );
};
