import { createMemo, For, Show } from 'solid-js';
import { readTrace } from '../../../cells/functions/ram-trace.ts';
import { displayUnit } from '../../../shared/quantities/quantities.ts';
import { fromSI } from '../../../shared/units/units.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { standingFigure } from '../state/moves.ts';
import { ticksTo } from './trace-scale.ts';
import './trace.css';

const BOX = { left: 56, top: 12, width: 260, height: 150 };

/** Force against depth while pressing, with the line fitted through it and the line the plan would give. */
export const TraceDrawing = (props: { cell: string }) => {
  const { sheet, show } = useSheet();
  const record = () => sheet.line(props.cell)?.record;
  const pairs = createMemo(() => {
    const text = record()?.kind === 'ram-trace' ? record()?.inputs?.trace : undefined;
    const read = text === undefined ? undefined : readTrace(text);
    return read && !('message' in read) ? read : undefined;
  });
  const figure = (name: string) => standingFigure(sheet.line(props.cell)?.result?.outputs[name]);
  const depthUnit = () => displayUnit('length', sheet.state.units);
  const forceUnit = () =>
    displayUnit('force', sheet.state.units, sheet.line(props.cell)?.result?.outputs.force_at_end?.display);
  const planned = () => {
    const slope = figure('slope')?.value;
    const share = figure('to_planned')?.value;
    return slope && share ? slope / share : undefined;
  };
  const drawn = createMemo(() => {
    const list = pairs();
    if (!list) return undefined;
    const deepest = Math.max(...list.map(({ depth }) => depth));
    const depths = ticksTo(fromSI(deepest, depthUnit()), 5);
    const strongest = Math.max(
      ...list.map(({ force }) => force),
      (figure('slope')?.value ?? 0) * deepest,
      (planned() ?? 0) * deepest,
    );
    const forces = ticksTo(fromSI(strongest, forceUnit()), 5);
    const x = (shown: number) => BOX.left + (BOX.width * shown) / (depths.at(-1) || 1);
    const y = (shown: number) => BOX.top + BOX.height * (1 - shown / (forces.at(-1) || 1));
    const xOf = (si: number) => x(fromSI(si, depthUnit()));
    const yOf = (si: number) => y(fromSI(si, forceUnit()));
    const line = (slope: number | undefined) =>
      slope === undefined
        ? undefined
        : { x1: xOf(0), y1: yOf(0), x2: xOf(deepest), y2: yOf(slope * deepest) };
    return {
      depths: depths.map((value) => ({ value, x: x(value) })),
      forces: forces.map((value) => ({ value, y: y(value) })),
      points: list.map(({ depth, force }) => ({ x: xOf(depth), y: yOf(force) })),
      fitted: line(figure('slope')?.value),
      plan: line(planned()),
    };
  });
  const number = (value: number) => (usesComma() ? String(value).replace('.', ',') : String(value));
  const words = () => {
    const slope = figure('slope');
    return slope
      ? `${pairs()?.length} pairs of depth and force; the fitted line gains ${show.output(props.cell, 'slope').value(slope)}.`
      : `${pairs()?.length} pairs of depth and force.`;
  };
  return (
    <Show when={drawn()}>
      {(d) => (
        <section class="trace">
          <h3 class="part-head">The trace</h3>
          <svg class="block w-full max-w-28rem h-auto" viewBox="0 0 340 206" role="img" aria-label={words()}>
            <For each={d().depths}>
              {(tick) => (
                <g>
                  <line class="grid" x1={tick.x} x2={tick.x} y1={BOX.top} y2={BOX.top + BOX.height} />
                  <text x={tick.x} y={BOX.top + BOX.height + 15} text-anchor="middle">
                    {number(tick.value)}
                  </text>
                </g>
              )}
            </For>
            <For each={d().forces}>
              {(tick) => (
                <g>
                  <line class="grid" x1={BOX.left} x2={BOX.left + BOX.width} y1={tick.y} y2={tick.y} />
                  <text x={BOX.left - 6} y={tick.y + 4} text-anchor="end">
                    {number(tick.value)}
                  </text>
                </g>
              )}
            </For>
            <text x={BOX.left + BOX.width / 2} y="202" text-anchor="middle">
              depth of full contact, {depthUnit().label}
            </text>
            <text transform={`translate(11 ${BOX.top + BOX.height / 2}) rotate(-90)`} text-anchor="middle">
              force, {forceUnit().label}
            </text>
            <Show when={d().plan}>{(line) => <line class="plan" {...line()} />}</Show>
            <Show when={d().fitted}>{(line) => <line class="fitted" {...line()} />}</Show>
            <For each={d().points}>
              {(point) => (
                <path class="point" d={`M${point.x - 4} ${point.y}h8M${point.x} ${point.y - 4}v8`} />
              )}
            </For>
          </svg>
          <p class="caption">
            Crosses: read at the press. Full line: fitted through them from nothing.
            <Show when={d().plan}> Broken line: as planned.</Show>
          </p>
          <p>{words()}</p>
        </section>
      )}
    </Show>
  );
};
