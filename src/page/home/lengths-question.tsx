import { createSignal, For, Show } from 'solid-js';
import { readKept, writeKept } from '../kit/kept.ts';
import { prefer, preferences } from '../kit/preferences.ts';

const ASKED = 'asked.length';

/** Where inches are the rule; the user has the last word. */
const inchesAreUsual = (): boolean => /^en-US\b/i.test(navigator.language);

/** Asked once: which lengths this shop works in. */
export const LengthsQuestion = () => {
  const [asked, setAsked] = createSignal(readKept(ASKED) === true);
  const offers = inchesAreUsual() ? (['in', 'mm', 'sheet'] as const) : (['mm', 'in', 'sheet'] as const);
  const words = { in: 'Inches', mm: 'Millimetres', sheet: 'As each sheet' };
  return (
    <Show when={!asked() && preferences().length === 'sheet'}>
      <section
        class="along justify-between gap-x-3 mb-3 px-3 py-2 bg-tint lined-rule"
        aria-label="Which lengths does this shop work in?"
      >
        <span>
          Which lengths does this shop work in?{' '}
          <span class="phone:hidden">Templates and sheets from elsewhere are then shown so.</span>
        </span>
        <span class="buttons phone:flex-nowrap">
          <For each={offers}>
            {(offer) => (
              <button
                type="button"
                onClick={() => {
                  prefer('length', offer);
                  writeKept(ASKED, true);
                  setAsked(true);
                }}
              >
                {words[offer]}
              </button>
            )}
          </For>
        </span>
      </section>
    </Show>
  );
};
