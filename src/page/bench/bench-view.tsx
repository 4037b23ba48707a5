import { createEffect, createSignal, For, onCleanup, onMount, Show } from 'solid-js';
import { CareList } from '../kit/care-list.tsx';
import { writtenOut } from '../kit/decimal-mark.ts';
import { createKept } from '../kit/keep-equal.ts';
import { addressOfSheet } from '../kit/router.ts';
import { say } from '../kit/words.ts';
import { careOfLines } from '../state/care.ts';
import { useSheet } from '../state/context.ts';
import { didHint } from '../state/hints.ts';
import { useLibrary } from '../state/library.ts';
import { useTools } from '../state/tools.ts';
import { GaugeOf } from './gauge-of.tsx';
import { Outcome } from './outcome.tsx';
import { ReadingPad } from './reading-pad.tsx';
import { splitReadings } from './readings-text.ts';
import { stayLit } from './stay-lit.ts';
import { linesOfStep } from './step.ts';
import { keyOf, type Stop, stopsOf } from './stops.ts';

/** At the machine: one dimension and one reading at a time, for one hand. */
export default function BenchView() {
  const { sheet, goTo } = useSheet();
  const { sheetId } = useTools();
  didHint('bench');
  onMount(() => onCleanup(stayLit()));
  const stops = createKept<Stop[]>(() => stopsOf(sheet), []);
  const wayOf = (stop: Stop) => sheet.line(stop.cell)?.record.way;
  /** Of a way that is not taken: nothing is read there. */
  const aside = (stop: Stop) => {
    const record = sheet.line(stop.cell)?.record;
    return record !== undefined && sheet.asideOf(record) !== undefined;
  };
  const firstDue = () => stops().find((stop) => stop.entry === '' && !aside(stop)) ?? stops()[0];
  const begun = firstDue();
  const [key, setKey] = createSignal(begun && keyOf(begun));
  // The first line that can be read may come later, written in another tab.
  createEffect(() => {
    const due = key() === undefined ? firstDue() : undefined;
    if (due) setKey(keyOf(due));
  });
  /** Never another one unasked: where the line that is read has gone, there is none until it is chosen. */
  const at = () => stops().findIndex((stop) => keyOf(stop) === key());
  const stop = () => stops()[at()];
  /** The next on the way that is gone, back or forth. */
  const beside = (step: -1 | 1) => {
    const rest = step === 1 ? stops().slice(at() + 1) : stops().slice(0, at()).reverse();
    return rest.find((one) => !aside(one));
  };
  const move = (step: -1 | 1) => {
    const to = beside(step);
    if (to) setKey(keyOf(to));
  };
  /** Counted without what lies on another way. */
  const count = () => {
    const due = stops().filter((one) => !aside(one));
    const now = due.findIndex((one) => keyOf(one) === key());
    return now < 0 ? `one of ${due.length}` : `${now + 1} of ${due.length}`;
  };
  const fork = () => {
    const now = stop();
    const way = now && wayOf(now);
    return way && sheet.forks().find(({ to }) => to === way.to);
  };
  const wayNote = () => {
    const now = stop();
    const forked = fork();
    if (!now || !forked) return undefined;
    if (aside(now)) return `Not needed: ${say(forked.taken!)} is taken.`;
    return forked.taken
      ? undefined
      : `One of ${forked.by.length === 2 ? 'two' : 'several'} ways (${say(wayOf(now)!.by)}): read only the one you take.`;
  };
  const library = useLibrary();
  const care = () => careOfLines(sheet, library(), linesOfStep(sheet.state.order, stops(), at()));
  const mark = (one: Stop) => (one.entry !== '' ? ': read' : aside(one) ? ': not needed' : '');
  const Ways = () => (
    <nav
      class="bench-ways grid grid-cols-[1fr_1fr] gap-2 [&>button]:(min-h-key text-figure)"
      aria-label="Dimensions"
    >
      <button type="button" disabled={!beside(-1)} onClick={() => move(-1)}>
        Back
      </button>
      <button type="button" disabled={!beside(1)} onClick={() => move(1)}>
        Next
      </button>
    </nav>
  );
  return (
    <main
      class="bench flex flex-col gap-1 min-h-[100dvh] max-w-30rem mx-auto px-2 pt-2 bg-paper"
      classList={{ waits: sheet.waits() }}
    >
      <header class="flex items-center justify-between">
        <a class="inline-flex items-center min-h-44px" href={addressOfSheet(sheetId)}>
          Back to the sheet
        </a>
        <span class="caption">{stops().length === 0 ? '' : count()}</span>
      </header>
      <h1 class="unseen">At the machine</h1>
      <Show
        when={stop()}
        fallback={
          <Show
            when={stops()[0]}
            fallback={
              <p class="p-3">
                Nothing on this sheet is read off a part yet. Add a measured line, or a size to cut, on the
                sheet.
              </p>
            }
          >
            {(first) => (
              <p class="p-3" role="status">
                The line that was read here is no longer on the sheet.{' '}
                <button type="button" onClick={() => setKey(keyOf(firstDue() ?? first()))}>
                  Go on with {(firstDue() ?? first()).title}
                </button>
              </p>
            )}
          </Show>
        }
      >
        {(now) => (
          <>
            <div class="bench-what">
              <label class="unseen" for="bench-stop">
                Dimension
              </label>
              <select
                id="bench-stop"
                class="min-h-key text-figure font-bold"
                value={keyOf(now())}
                onChange={(event) => setKey(event.currentTarget.value)}
              >
                <For each={stops()}>
                  {(one) => (
                    <option value={keyOf(one)} selected={keyOf(one) === keyOf(now())}>
                      {sheet.numberOf(one.cell)} {one.title}
                      {mark(one)}
                    </option>
                  )}
                </For>
              </select>
              <GaugeOf stop={now()} />
              <Show when={wayNote()}>
                {(words) => (
                  <p class="flex flex-wrap items-center gap-2 py-2px font-bold">
                    {words()}
                    <button
                      type="button"
                      onClick={() => sheet.document.setWay(wayOf(now())!.to, wayOf(now())!.by)}
                    >
                      Take this way
                    </button>
                  </p>
                )}
              </Show>
              <Show when={care().length > 0}>
                <details class="caution my-1 px-2 py-1 text-small" open>
                  <summary class="font-bold text-doubt cursor-pointer">Caution</summary>
                  <CareList list={care()} />
                </details>
              </Show>
              <Show when={now().note}>
                {(note) => (
                  <p class="caption note clamp-2 hover:clamp-12 focus-visible:clamp-12" tabindex={0}>
                    {say(note())}
                  </p>
                )}
              </Show>
            </div>
            <Outcome stop={now()} />
            <div class="[display:contents]">
              <Show
                when={splitReadings(now().entry)}
                fallback={
                  <div class="p-3">
                    It stands as {writtenOut(now().entry)}, which is no plain list of readings.{' '}
                    <button type="button" class="go" onClick={() => goTo(now().cell)}>
                      Change it on the sheet
                    </button>
                    <Ways />
                  </div>
                }
              >
                <ReadingPad stop={now()} onBack={setKey}>
                  <Ways />
                </ReadingPad>
              </Show>
            </div>
          </>
        )}
      </Show>
    </main>
  );
}
