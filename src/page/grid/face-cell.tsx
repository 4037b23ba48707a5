import { createMemo, For, Show } from 'solid-js';
import type { CellOutput } from '../../../cells/record/cell.ts';
import { bandOf } from '../../../shared/checks/band.ts';
import { ProblemNote } from '../entry/problem-note.tsx';
import { useSheet } from '../state/context.ts';
import { keepInPlace } from '../state/in-place.ts';
import { moveText } from '../state/move-text.ts';
import { standingFigure } from '../state/moves.ts';
import { lineRow, outputRow } from '../state/row-key.ts';
import { GridCell } from './grid-cell.tsx';
import { HeldValue } from './held-note.tsx';

export interface FaceCellProps {
  cell: string;
  outputs: readonly CellOutput[];
}

/** The two or three figures of a folded library cell, each in one row of its own line. */
export const FaceCell = (props: FaceCellProps) => {
  const { sheet } = useSheet();
  const line = () => sheet.line(props.cell);
  const told = () => props.outputs.filter(({ name }) => !line()?.shape?.outputs[name]?.idle);
  /** What keeps a figure from being there, said once. */
  const problem = createMemo(() =>
    told()
      .map(({ name }) => line()?.shape?.outputs[name]?.problem)
      .find((found) => found !== undefined),
  );
  return (
    <GridCell row={lineRow(props.cell)} column="value" class="face" span={2}>
      <dl class="face-figures">
        <For each={told()}>{(output) => <FaceFigure cell={props.cell} output={output} />}</For>
      </dl>
      <Show when={problem()}>{(p) => <ProblemNote problem={p()} cell={props.cell} brief />}</Show>
    </GridCell>
  );
};

/** The place for what a size of the part came out at: its own line takes it. */
const AsCutPlace = (props: { cell: string; output: CellOutput }) => {
  const { sheet, cursor } = useSheet();
  const begin = () => {
    keepInPlace(lineRow(props.cell), () => {
      cursor.move({ row: lineRow(props.cell), column: 'name' });
      cursor.setUnfolded(true);
    });
    cursor.edit(outputRow(props.cell, props.output.name));
  };
  return (
    <button
      type="button"
      class="as-cut-place block w-full min-h-28px px-6px lined-rule text-left text-soft [font-style:oblique] cursor-text touch:(min-h-target text-small)"
      tabindex={-1}
      aria-label={`${sheet.titleOf(props.cell)}, ${props.output.label}: as measured`}
      onClick={begin}
    >
      as measured
    </button>
  );
};

const FaceFigure = (props: { cell: string; output: CellOutput }) => {
  const { sheet, show } = useSheet();
  const name = () => props.output.name;
  const shape = () => sheet.shape(props.cell, name());
  const figure = () => standingFigure(sheet.output(props.cell, name()));
  /** A line of the sheet takes this very size to be cut: it has the place for what was measured. */
  const isTaken = createMemo(() => {
    const own = `=${sheet.line(props.cell)?.record.name}.${name()}`;
    return (
      props.output.ofPart === true &&
      sheet.lines().some(({ record }) => record.role === 'chosen' && record.entry?.replace(/\s/g, '') === own)
    );
  });
  const at = () => show.output(props.cell, name());
  const told = createMemo(() => {
    const own = figure();
    const output = sheet.output(props.cell, name());
    return own && at().told(own, bandOf(own, output, shape()?.stands === 'measured'));
  });
  const changed = () => {
    const { from, to } = sheet.line(props.cell)?.moved[name()] ?? {};
    const by = from !== undefined && to !== undefined ? to - from : undefined;
    const like = figure();
    return moveText(by, like, (si) => at().step(si, like));
  };
  return (
    <div class="grid grid-cols-[minmax(0,1fr)_minmax(11rem,auto)] gap-2 items-baseline leading-[1.25] not-first:lined-t-dotted-rule narrow:(grid-cols-[1fr] gap-0) phone:(grid-cols-[minmax(0,1fr)_auto] gap-2)">
      <dt class="caption" title={props.output.label}>
        {props.output.label}
      </dt>
      <dd>
        <Show
          when={standingFigure(shape())}
          fallback={shape()?.logical === undefined ? '—' : String(shape()!.logical)}
        >
          <b class="whitespace-nowrap" textContent={told()?.value ?? ''} />{' '}
          <small class="caption" textContent={told()?.beside ?? ''} />
          <Show when={show.other(props.cell, name())}>
            {(other) => (
              <small class="other-system block caption whitespace-nowrap">
                <Show when={figure()}>{(own) => other().value(own())}</Show>
              </small>
            )}
          </Show>
        </Show>
        <span class="moved block text-moved text-small empty:hidden" textContent={changed() ?? ''} />
        <HeldValue cell={props.cell} output={name()} />
        <Show when={props.output.ofPart && shape()?.planned && !isTaken()}>
          <AsCutPlace {...props} />
        </Show>
      </dd>
    </div>
  );
};
