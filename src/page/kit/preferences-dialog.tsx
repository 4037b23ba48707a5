import { For } from 'solid-js';
import { ABOUT, CHOICES, NAMES, type PreferenceName } from './choices.ts';
import { Dialog } from './dialog.tsx';
import { prefer, preferences } from './preferences.ts';

const HINTS: Partial<Record<PreferenceName, string>> = {
  length: 'For templates and sheets that come in. No entry is changed: a size typed in inches stays one.',
  decimal: 'For what is shown and typed here. Sheets are kept with a point, so that both read alike.',
  bush: 'Labels and hints are shown in your word; names in formulas and what is stored stay as they are.',
};

/** What this browser's user prefers. Every choice takes effect at once. */
export default function PreferencesDialog(props: { onClose: () => void }) {
  return (
    <Dialog title="Preferences" onClose={props.onClose}>
      <p class="caption">
        Kept in this browser, and in a file of the whole shop; no sheet is changed by them.
      </p>
      <div class="preferences grid grid-cols-[repeat(auto-fit,minmax(min(17rem,100%),1fr))] gap-x-5 gap-y-4">
        <For each={NAMES}>
          {(name) => (
            <fieldset>
              <legend class="w-full mb-1 font-bold lined-b">{ABOUT[name]}</legend>
              <For each={CHOICES[name] as ReadonlyArray<readonly [string, string]>}>
                {([value, label]) => (
                  <label class="flex items-center gap-2 min-h-target">
                    <input
                      type="radio"
                      class="w-18px h-18px accent-pencil"
                      name={`preference-${name}`}
                      value={value}
                      checked={preferences()[name] === value}
                      onChange={() => prefer(name, value as never)}
                    />
                    {label}
                  </label>
                )}
              </For>
              {HINTS[name] && <p class="caption">{HINTS[name]}</p>}
            </fieldset>
          )}
        </For>
      </div>
    </Dialog>
  );
}
