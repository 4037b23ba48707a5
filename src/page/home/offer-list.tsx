import { createSignal, For, Show } from 'solid-js';
import { type Offer, offers } from '../handing-on/templates.ts';
import { say } from '../kit/words.ts';
import { OfferBox } from './offer-box.tsx';
import { REPAIR_LABELS, repairsOf } from './repairs.ts';

const templates = offers.filter(({ template }) => template);
const REST = 'Others';
const labelsOf = ({ title }: Offer): string[] => [...repairsOf(title.tags), REST];

/** The templates by what they repair: all of them under their heads, or those of one repair. */
export const OfferList = (props: { onTake: (offer: Offer) => void }) => {
  const [chosen, setChosen] = createSignal<string>();
  const of = (label: string) =>
    templates.filter((offer) =>
      chosen() === undefined ? labelsOf(offer)[0] === label : labelsOf(offer).includes(label),
    );
  let buttons!: HTMLFieldSetElement;
  /** Its button goes with it: the focus goes up to where the long list begins. */
  const showAll = () => {
    setChosen(undefined);
    buttons.querySelector('button')?.focus();
  };
  const labels = [...REPAIR_LABELS, REST].filter((label) => of(label).length > 0);
  return (
    <>
      <fieldset class="repairs buttons" ref={buttons}>
        <legend class="unseen">Only the templates for</legend>
        <For each={labels}>
          {(label) => (
            <button
              type="button"
              class="phone:px-2"
              aria-pressed={chosen() === label}
              onClick={() => setChosen(chosen() === label ? undefined : label)}
            >
              {say(label)}
            </button>
          )}
        </For>
      </fieldset>
      <For each={chosen() === undefined ? labels : [chosen()!]}>
        {(label) => (
          <>
            <h3 class="mt-3 mb-2 text-head">{say(label)}</h3>
            {/* In the long list the beginning of each note; whole among those of one repair, and on the sheet. */}
            <div
              class="grid grid-cols-[repeat(auto-fill,minmax(min(19rem,100%),1fr))] gap-3"
              classList={{ 'phone:[&_p]:clamp-2': chosen() === undefined }}
            >
              <For each={of(label)}>
                {(offer) => <OfferBox offer={offer} word="Begin this job" onTake={props.onTake} />}
              </For>
            </div>
          </>
        )}
      </For>
      <Show when={chosen()}>
        <button type="button" class="mt-3" onClick={showAll}>
          Show all {templates.length}
        </button>
      </Show>
    </>
  );
};
