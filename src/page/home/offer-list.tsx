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
      <fieldset class="repairs" ref={buttons}>
        <legend class="unseen">Only the templates for</legend>
        <For each={labels}>
          {(label) => (
            <button
              type="button"
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
            <h3 class="repair">{say(label)}</h3>
            <div class="offers" classList={{ whole: chosen() !== undefined }}>
              <For each={of(label)}>
                {(offer) => <OfferBox offer={offer} word="Begin this job" onTake={props.onTake} />}
              </For>
            </div>
          </>
        )}
      </For>
      <Show when={chosen()}>
        <button type="button" class="all-repairs" onClick={showAll}>
          Show all {templates.length}
        </button>
      </Show>
    </>
  );
};
