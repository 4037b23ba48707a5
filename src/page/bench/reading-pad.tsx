import { createEffect, createMemo, createSignal, type JSX, on, onCleanup, onMount, Show } from 'solid-js';
import { leadingDigits } from '../entry/begun-reading.ts';
import { commitTyped } from '../entry/commit-typed.ts';
import { usesComma, writtenOut } from '../kit/decimal-mark.ts';
import { asPageGoes, putTypedAside } from '../kit/typed-aside.ts';
import { useSheet } from '../state/context.ts';
import { keyedReading, listedReadings, sameUnit } from './keyed.ts';
import { createKeyedText } from './keyed-text.ts';
import { decimalsOf, type PadKey, press, withoutOffer } from './pad.ts';
import { PadKeys } from './pad-keys.tsx';
import { Readings } from './readings.tsx';
import { joinReadings, splitReadings } from './readings-text.ts';
import { resolutionOf } from './resolution.ts';
import { Sketch } from './sketch.tsx';
import { further, nextSlot, readingAt, type Slot, sameSlot, slotsOf, withReading } from './slots.ts';
import { keyOf, type Stop } from './stops.ts';

export interface ReadingPadProps {
  stop: Stop;
  /** Back to a dimension, by its key. */
  onBack: (key: string) => void;
  /** What stands below the keys and stays there with them. */
  children: JSX.Element;
}

/** Takes the readings of one dimension, one at a time. */
export const ReadingPad = (props: ReadingPadProps) => {
  const { sheet } = useSheet();
  /** The slot asked for; without one, the one behind the last reading is due. */
  const [chosen, setChosen] = createSignal<Slot>();
  const split = createMemo(() => splitReadings(props.stop.entry) ?? { places: [], tail: '' });
  const slots = createMemo(() => {
    const own = chosen();
    const all = slotsOf(props.stop.plan, split().places);
    return own && !all.some((slot) => sameSlot(slot, own)) ? [...all, own] : all;
  });
  const at = () => chosen() ?? nextSlot(slotsOf(props.stop.plan, split().places), split().places);
  const rounds = () => {
    const counts: number[] = [];
    for (const { place } of slots()) counts[place] = (counts[place] ?? 0) + 1;
    return Array.from(counts, (n) => n ?? 1);
  };
  /** The reading taken last before this one. */
  const last = () => {
    const read = split()
      .places.flat()
      .filter((text) => text !== '');
    return read.at(-1);
  };
  const kept = () => leadingDigits(last());
  /** What was to be taken and is no number. */
  const [refused, setRefused] = createSignal<string>();
  let box!: HTMLInputElement;
  /** What a bare number counts as: the unit behind the readings so far, else the sheet's. */
  const unit = () => {
    const behind = /^[^\d±+]*/u.exec(split().tail)?.[0].trim();
    return behind || (props.stop.length ? sheet.state.units.length : '');
  };
  /** Where what is keyed in goes: nobody having planned how many, one more behind the last is always due. */
  const due = () =>
    at() ??
    (props.stop.plan.length === 0 ? further(split().places, lastSlot(split().places), 'round') : undefined);
  const dimension = createMemo(() => keyOf(props.stop));
  createEffect(on(dimension, () => setChosen(undefined), { defer: true }));
  const keyed = createKeyedText({
    dimension,
    place: () => ({ stop: props.stop, split: split(), slot: due() }),
    due: createMemo(() => JSON.stringify([at(), props.stop.entry])),
    offer: createMemo(kept),
  });
  const { text, setText } = keyed;
  /** More than the digits taken over: those alone are no reading of anybody's. */
  const canTake = () => due() !== undefined && text() !== kept() && whyNot() === undefined;
  const key = (pressed: PadKey) => setText(press(text(), pressed, kept()));
  /** Figures behind the mark that can be read: as its gauge shows, else one more than any reading so far. */
  const readable = () => {
    const shown = resolutionOf(sheet, props.stop.gauge, unit());
    if (shown !== undefined) return shown;
    // A fraction or a whole number says nothing of it.
    const most = Math.max(0, ...split().places.flat().map(decimalsOf));
    return most === 0 ? undefined : most + 1;
  };
  /** Why what is keyed in is not taken; nothing where it can be. */
  const whyNot = (): string | undefined => {
    const read = keyedReading(text());
    if (!read) return `“${text()}” is no reading: key in one number, such as 1.7481 or 1 3/4.`;
    if (read.unit && !sameUnit(read.unit, unit()) && !takesUnit())
      return `“${text()}” is in ${read.unit}, and what is read here is in ${unit()}. Key it in so.`;
    const most = readable();
    if (most !== undefined && decimalsOf(read.figure) > most)
      return `“${text()}” has more figures than can be read there: ${most} behind the mark. Clear it and key the reading in anew.`;
    if (!due())
      return `All planned readings are in: “${text()}” is not taken yet. Press One more here, or choose the reading it is to stand for.`;
    return undefined;
  };
  /** Nothing is read yet: the first reading may bring its unit. */
  const takesUnit = () => split().places.length === 0 && props.stop.length;
  const enter = (places: string[][], tail: string) => {
    box.focus();
    if (sheet.document.refuse) {
      sheet.document.refuse();
      return;
    }
    const text = joinReadings({ places, tail });
    const leave = () => void setChosen(undefined);
    keyed.taken();
    commitTyped(sheet, props.stop.spot, { text, byKey: true, leave }, 'commitStored');
  };
  const take = () => {
    if (text() === '' || text() === kept()) return;
    if (!canTake()) {
      setRefused(text());
      return;
    }
    const { figure, unit: own } = keyedReading(text())!;
    enter(withReading(split().places, due()!, figure), (takesUnit() && own) || split().tail);
  };
  /** A list pasted fills the places from the one that is due on. */
  const paste = (event: ClipboardEvent) => {
    const list = listedReadings(event.clipboardData?.getData('text/plain') ?? '', usesComma());
    if (!list) return;
    event.preventDefault();
    if (list.tail && !sameUnit(list.tail, unit()) && !takesUnit()) {
      setText(list.places.flat().join(' '));
      setRefused(text());
      return;
    }
    const fresh = split().places.length === 0;
    const free = slots().filter((slot) => readingAt(split().places, slot) === '');
    let places: string[][] = fresh ? list.places : split().places.map((place) => [...place]);
    if (!fresh)
      for (const figure of list.places.flat())
        places = withReading(places, free.shift() ?? further(places, lastSlot(places), 'round'), figure);
    enter(places, split().tail || list.tail);
  };
  /** Typed on a keyboard: read with either mark, so that a hand-held one does not have to be looked for. */
  const typed = (value: string) =>
    setText(withoutOffer(value.replaceAll(',', '.').replace(/[^\d./ +\-a-zµ"″”]/giu, ''), kept()));
  // A gauge that types like a keyboard does not look where the focus is: its figures go into the box all the same.
  const fromElsewhere = (event: KeyboardEvent) => {
    const target = event.composedPath()[0];
    // Nor may they choose from a list: dimensions begin with their numbers.
    if (target instanceof HTMLElement && target.matches('input, textarea')) return;
    if (!/^[\d.,-]$/.test(event.key) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    box.focus();
    typed(text() + event.key);
  };
  onMount(() => document.addEventListener('keydown', fromElsewhere));
  onCleanup(() => document.removeEventListener('keydown', fromElsewhere));
  // Keyed in and not taken as this view goes: it is offered on the sheet, when that is opened next.
  const aside = () => {
    for (const { place, text: typed } of [
      ...keyed.left(),
      ...(keyed.isKeyed() ? [{ place: keyed.place(), text: text() }] : []),
    ]) {
      const { places, tail } = place.split;
      const slot = place.slot ?? further(places, lastSlot(places), 'round');
      const entry = joinReadings({ tail, places: withReading(places, slot, typed.trim()) });
      putTypedAside(sheet.document.id, place.stop.spot, entry);
    }
  };
  createEffect(() => {
    const typing = text() !== '' && text() !== kept() ? props.stop.spot.field : undefined;
    sheet.elsewhere.at({ line: props.stop.cell, ...(typing !== undefined && { typing }) });
  });
  onCleanup(() => sheet.elsewhere.at(undefined));
  asPageGoes(aside);
  onCleanup(aside);
  return (
    <>
      <Show when={props.stop.length}>
        <Sketch rounds={rounds()} at={at()} inside={props.stop.inside} round={props.stop.round} />
      </Show>
      <Readings slots={slots()} places={split().places} at={at()} onChoose={setChosen} />
      {/* At one place of the screen, whatever comes in above: keys are struck without looking. */}
      <div class="sticky bottom-0 z-2 grid gap-2 mt-auto pb-2 bg-paper">
        <div class="bench-entry flex items-center gap-2">
          <input
            class="flex-1 min-w-0 min-h-key lined-wide text-title font-bold placeholder:(text-plain font-normal)"
            ref={box}
            inputmode="none"
            autocomplete="off"
            enterkeyhint="done"
            aria-label={`Reading of ${props.stop.title}`}
            placeholder={due() ? 'read and key in' : 'all planned readings are in'}
            value={usesComma() ? text().replace('.', ',') : text()}
            onPaste={paste}
            onInput={(event) => typed(event.currentTarget.value)}
            onKeyDown={(event) => event.key === 'Enter' && take()}
          />
          <Show when={unit()}>
            {(word) => <span class="bench-unit self-center text-figure">{word()}</span>}
          </Show>
          <Show when={text() !== '' && text() === kept()}>
            <span class="caption">from the last one</span>
          </Show>
          <button type="button" class="min-h-key" disabled={text() === ''} onClick={() => setText('')}>
            Clear
          </button>
        </div>
        <Show when={text() !== '' && refused() === text()}>
          <p class="caption" role="status">
            {whyNot()}
          </p>
        </Show>
        <Show when={keyed.left()[0]}>
          {(one) => (
            <p class="caption along" role="status">
              “{writtenOut(one().text)}” was keyed in for {one().place.stop.title} and is not taken yet.{' '}
              <button type="button" class="go" onClick={() => props.onBack(one().dimension)}>
                Back to it
              </button>
            </p>
          )}
        </Show>
        <div class="grid grid-flow-col auto-cols-[1fr] gap-2 [&>button]:(min-h-44px px-1)">
          <button
            type="button"
            onClick={() => setChosen(further(split().places, lastSlot(split().places), 'round'))}
          >
            One more here
          </button>
          <Show when={props.stop.length}>
            <button
              type="button"
              onClick={() => setChosen(further(split().places, lastSlot(split().places), 'along'))}
            >
              Next place along
            </button>
          </Show>
        </div>
        <PadKeys
          onKey={key}
          onTake={take}
          canTake={canTake()}
          takeWord={at() && readingAt(split().places, at()!) ? 'Take again' : 'Take it'}
        />
        {props.children}
      </div>
    </>
  );
};

const lastSlot = (places: ReadonlyArray<readonly string[]>): Slot => {
  const place = Math.max(0, places.length - 1);
  return { place, direction: Math.max(0, (places[place]?.length ?? 1) - 1) };
};
