import { createSignal, Show } from 'solid-js';
import { JsonPicker } from '../handing-on/json-picker.tsx';
import { createNarrow } from '../kit/narrow.ts';
import { addressOfBook, addressToOpen } from '../kit/router.ts';

export interface HomeHeadProps {
  onFile: (list: FileList | null) => void;
  onEmpty: (length: 'in' | 'mm') => void;
  onPreferences: () => void;
}

/** What this is, and every way in but the templates. On a phone those ways wait behind one button: templates come first. */
export const HomeHead = (props: HomeHeadProps) => {
  const narrow = createNarrow();
  const [open, setOpen] = createSignal(false);
  let file!: HTMLInputElement;
  return (
    <div class="head flex flex-wrap items-end justify-between gap-3 phone:(grid grid-cols-[1fr_auto] items-center)">
      <div class="what phone:[display:contents]">
        <h1 class="text-title">Fitwright</h1>
        <p class="phone:col-span-full">
          Bring a worn machine back to size: every dimension worked out before it is cut, and proven after.
        </p>
      </div>
      <JsonPicker ref={file} label="Open a file" onFiles={(files) => props.onFile(files)} />
      <Show when={narrow()}>
        <button
          type="button"
          class="ways-in phone:[grid-area:1/2]"
          aria-expanded={open()}
          onClick={() => setOpen(!open())}
        >
          Open a file and more
        </button>
      </Show>
      <Show when={!narrow() || open()}>
        <div class="buttons phone:col-span-full">
          <a class="tall-link px-2" href={addressOfBook()}>
            Cell book
          </a>
          <button type="button" onClick={() => file.click()}>
            Open a file
          </button>
          <a class="button" href={addressToOpen()}>
            Open a text or a code
          </a>
          <button type="button" onClick={() => props.onEmpty('in')}>
            Empty sheet, inch
          </button>
          <button type="button" onClick={() => props.onEmpty('mm')}>
            Empty sheet, mm
          </button>
          <button type="button" onClick={() => props.onPreferences()}>
            Preferences
          </button>
        </div>
      </Show>
    </div>
  );
};
