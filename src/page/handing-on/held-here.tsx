import { createSignal, For, Show } from 'solid-js';
import type { SheetFile } from '../../../shared/sheet/format.ts';
import type { Held } from '../../document/sharing/here.ts';
import type { Shop } from '../../document/storage/shop.ts';
import { SelectField } from '../kit/select-field.tsx';
import { createChosen } from './chosen-differences.ts';
import { DifferencesList } from './differences-list.tsx';
import { takeInPlace } from './take-over.ts';

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

const STANDING: Record<Held['standing'], string> = {
  same: 'This very sheet is here already, word for word.',
  older: 'What comes in is a state that the sheet here once had; it has gone on since.',
  other: 'A sheet here has the same lines, and says other things in these places.',
};

/** The sheets here that the one coming in may be a state of, and what is different. */
export const HeldHere = (props: {
  held: readonly Held[];
  file: SheetFile;
  shop: Shop;
  onRun: (work: Promise<string | undefined>) => void;
}) => {
  const [chosen, setChosen] = createSignal(0);
  const one = () => props.held[chosen()] ?? props.held[0]!;
  const name = (held: Held) => `${held.title || 'without a title'}, ${when.format(held.changed)}`;
  return (
    <section class="held grid gap-2 justify-items-start p-3 lined [&>:is(.differences,.field)]:w-full">
      <h3 class="text-figure mb-1">Beside what is here</h3>
      <Show when={props.held.length > 1} fallback={<p>{name(one())}</p>}>
        <SelectField
          label="Compared with"
          value={String(chosen())}
          options={props.held.map((held, k) => ({ value: String(k), label: name(held) }))}
          onCommit={(value) => setChosen(Number(value))}
        />
      </Show>
      <p>{STANDING[one().standing]}</p>
      <Show when={one().standing !== 'same'}>
        <For each={[one()]}>
          {(held) => <Choice held={held} file={props.file} shop={props.shop} onRun={props.onRun} />}
        </For>
      </Show>
    </section>
  );
};

/** The differences, each to be taken or left. */
const Choice = (props: {
  held: Held;
  file: SheetFile;
  shop: Shop;
  onRun: (work: Promise<string | undefined>) => void;
}) => {
  const { ticks, some, count } = createChosen(() => props.held.differences);
  return (
    <>
      <DifferencesList
        differences={props.held.differences}
        none="Only what is shown differs, no value."
        ticks={ticks}
      />
      <button
        type="button"
        disabled={some() !== undefined && count() === 0}
        onClick={() => props.onRun(takeInPlace(props.shop, props.held.id, props.file, some()))}
      >
        {some()
          ? `Take the ${count()} ticked into the one that is here`
          : 'Make the one that is here say this'}
      </button>
      <p class="caption">
        {some() ? 'In the places that are ticked' : 'In all these places'}, also where it was changed here.
        What it says now is kept in its history, and the change can be undone.
      </p>
    </>
  );
};
