import { For, Show, Suspense } from 'solid-js';
import { ProblemNote } from '../entry/problem-note.tsx';
import { late } from '../kit/late.tsx';
import { useSheet } from '../state/context.ts';
import { cellOfRow, isLineRow, outputOfRow, type RowKey } from '../state/row-key.ts';
import { Actions } from './actions.tsx';
import { Budget } from './budget.tsx';
import { FeedLinks } from './feed-links.tsx';
import { FormulaPart } from './formula-part.tsx';
import { KindPart } from './kind-part.tsx';
import { LineFields, LineLimits } from './line-fields.tsx';
import { NotePart } from './note-part.tsx';
import { OutputFields } from './output-fields.tsx';
import { ProofParts } from './proof-parts.tsx';
import { ReadingsPart } from './readings-part.tsx';
import { TextFields } from './text-fields.tsx';
import { TraceDrawing } from './trace-drawing.tsx';

const RingPart = late('The solving of a ring', () => import('./ring-part.tsx'));
const WindowPart = late('The window', () => import('./window-part.tsx'));
const WorkBackPart = late('Working back', () => import('./work-back-part.tsx'));
const GaugePart = late('The choice of a gauge', () => import('./gauge-part.tsx'));

/** The line under the cursor, laid open. A library cell's head and each of its outputs unfold by themselves. */
export default function Unfolded(props: { row: RowKey }) {
  const { sheet } = useSheet();
  const cell = () => cellOfRow(props.row);
  const line = () => sheet.line(cell())!;
  const role = () => line().record.role;
  const isText = () => role() === 'section' || role() === 'remark';
  const isHead = () => role() === 'cell' && isLineRow(props.row);
  /** A size that is cut: what it came out at is what its line is opened for. */
  const isPlanned = () => role() === 'chosen' || role() === 'worked';
  const output = () => outputOfRow(props.row) ?? 'value';
  /** Those not shown at a field of this line. */
  const problems = () =>
    (line().shape?.problems ?? []).filter(
      (p) => p.field === undefined || p.field === 'entry' || p.field === 'kind',
    );
  /** It is solved where it stands in a ring, or stands in one that is not. */
  const isRing = () =>
    line().record.solved ||
    Object.values(line().shape?.outputs ?? {}).some(({ problem }) => problem?.kind === 'ring');
  return (
    <div class="unfold">
      <Show when={isLineRow(props.row)}>
        <Show when={!isText() && !isHead()}>
          <NotePart cell={cell()} />
        </Show>
        <For each={problems()}>{(problem) => <ProblemNote problem={problem} cell={cell()} />}</For>
        <Show when={isRing()}>
          <Suspense>
            <RingPart cell={cell()} />
          </Suspense>
        </Show>
      </Show>
      <Show when={isText()}>
        <TextFields cell={cell()} />
      </Show>
      <Show when={isHead()}>
        <TraceDrawing cell={cell()} />
        <KindPart cell={cell()} />
        <Suspense>
          <WindowPart cell={cell()} />
        </Suspense>
      </Show>
      <Show when={!isText() && !isHead()}>
        <div class="parts">
          <Show when={role() === 'cell'}>
            <OutputFields cell={cell()} output={output()} />
          </Show>
          <Show when={isPlanned()}>
            <LineLimits cell={cell()} />
          </Show>
          <Show when={role() !== 'cell'}>
            <LineFields cell={cell()} />
          </Show>
          <Show when={role() !== 'cell' && !isPlanned()}>
            <LineLimits cell={cell()} />
          </Show>
          <div class="grid gap-2">
            <FormulaPart cell={cell()} output={output()} />
            <Show when={role() !== 'cell'}>
              <ReadingsPart cell={cell()} />
            </Show>
            <FeedLinks cell={cell()} />
          </div>
          <ProofParts cell={cell()} output={output()} />
          <div class="grid gap-4 empty:hidden min-[760px]:col-span-2">
            <Suspense>
              {/* A reading stays what it is. */}
              <Show when={role() !== 'measured'}>
                <WorkBackPart cell={cell()} output={output()} />
              </Show>
              <Show when={role() !== 'cell'}>
                <WindowPart cell={cell()} />
              </Show>
              <GaugePart cell={cell()} output={output()} />
            </Suspense>
          </div>
          <Budget cell={cell()} output={line().result?.outputs[output()] ? output() : 'mean'} />
        </div>
      </Show>
      <Show when={isLineRow(props.row)}>
        <Actions cell={cell()} />
      </Show>
    </div>
  );
}
