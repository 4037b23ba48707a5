import { createEffect, For, Show } from 'solid-js';
import { bandOf } from '../../../shared/checks/band.ts';
import { extremesOf } from '../../engine/report/judged-by.ts';
import { ProblemNote } from '../entry/problem-note.tsx';
import { SlipNote } from '../grid/slip-note.tsx';
import { CheckMark } from '../kit/check-mark.tsx';
import { leading, serviceWords } from '../kit/check-words.ts';
import { LimitBar } from '../kit/limit-bar.tsx';
import { sayMessage } from '../kit/say-message.ts';
import { useSheet } from '../state/context.ts';
import { judgedText } from '../state/judged-text.ts';
import type { Stop } from './stops.ts';

/** What the readings come to so far: figure, limits, check, and any question about what was just entered. */
export const Outcome = (props: { stop: Stop }) => {
  const { sheet, show } = useSheet();
  const line = () => sheet.line(props.stop.cell);
  const output = () => line()?.result?.outputs[props.stop.output];
  const at = () => show.output(props.stop.cell, props.stop.output);
  const read = () => line()?.record.role === 'measured';
  const figure = () =>
    props.stop.entry === '' ? undefined : read() ? output()?.planned : output()?.measured;
  /** Before anything is read: the size that is to come out. */
  const due = () => (props.stop.entry === '' && !read() ? output()?.planned : undefined);
  /** The band its verdict goes by. */
  const shown = () => {
    const own = figure() ?? due();
    return own && bandOf(own, output(), figure() !== undefined);
  };
  /** What is held to the limits in its place, once there are readings. */
  const ends = () => (figure() ? extremesOf(output()) : undefined);
  const slips = () => (line()?.result?.slips ?? []).filter(({ field }) => field === props.stop.spot.field);
  const problems = () =>
    (line()?.result?.problems ?? []).filter(({ field }) => field === props.stop.spot.field);
  const verdict = () => output() && leading(output()!.check);
  const state = () => verdict()?.state;
  let section!: HTMLElement;
  // On a low screen the keys lie over what comes in here: a question is brought above them.
  createEffect(() => {
    if (slips().length + problems().length > 0)
      requestAnimationFrame(() => section.lastElementChild?.scrollIntoView({ block: 'nearest' }));
  });
  return (
    <section
      ref={section}
      class="grid grid-cols-[1.25fr_1fr] gap-x-2 items-center [&>:is(.problem,.slip)]:(col-span-full [scroll-margin-bottom:28.5rem])"
      aria-label="What it comes to"
      aria-live="polite"
    >
      <Show when={figure()}>
        {(f) => (
          <p>
            <b class="text-head">{at().value(f(), shown())}</b> {at().beside(f(), shown()!)}
            <Show when={output()?.difference}>
              {(d) => <span class="caption"> {at().change(d().value, d())} from plan</span>}
            </Show>
          </p>
        )}
      </Show>
      <Show when={due()}>
        {(f) => (
          <p>
            <span class="caption">planned </span>
            <b class="text-head">{at().value(f(), shown())}</b> {at().beside(f(), shown()!)}
          </p>
        )}
      </Show>
      <Show when={figure() && state() && state() !== 'no limits'}>
        <CheckMark
          state={state()!}
          more={[verdict()!.side, serviceWords(output()!.check)].filter(Boolean).join('; ')}
        />
        <Show when={!output()!.problem && (output()!.check.note ?? output()!.check.where)}>
          {(why) => <p class="caption">{sayMessage(why(), sheet)}</p>}
        </Show>
      </Show>
      <Show when={ends() && judgedText(output(), at())}>{(text) => <p class="caption">{text()}</p>}</Show>
      <Show when={(figure() ?? due()) && output()?.limits}>
        {(limits) => (
          <LimitBar
            lower={limits().lower?.value}
            upper={limits().upper?.value}
            wear={limits().wear?.value}
            value={(figure() ?? due())?.value}
            low={(ends()?.least.band ?? shown())?.low}
            high={(ends()?.greatest.band ?? shown())?.high}
            metalOn={limits().metalOn}
            actual={figure() !== undefined}
            lowerText={limits().lower && at().limitNumber(limits().lower!.value, figure() ?? due(), shown())}
            upperText={limits().upper && at().limitNumber(limits().upper!.value, figure() ?? due(), shown())}
            words={`${at().value((figure() ?? due())!, shown())} against its limits`}
          />
        )}
      </Show>
      <For each={problems()}>{(problem) => <ProblemNote problem={problem} cell={props.stop.cell} />}</For>
      <For each={slips()}>{(slip) => <SlipNote slip={slip} cell={props.stop.cell} />}</For>
    </section>
  );
};
