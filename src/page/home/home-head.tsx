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
    <div class="head">
      <div class="what">
        <h1>Fitwright</h1>
        <p>
          Bring a worn machine back to size: every dimension worked out before it is cut, and proven after.
        </p>
      </div>
      <JsonPicker ref={file} label="Open a file" onFiles={(files) => props.onFile(files)} />
      <Show when={narrow()}>
        <button type="button" class="ways-in" aria-expanded={open()} onClick={() => setOpen(!open())}>
          Open a file and more
        </button>
      </Show>
      <Show when={!narrow() || open()}>
        <div class="buttons">
          <a class="to-book" href={addressOfBook()}>
            Cell book
          </a>
          <button type="button" onClick={() => file.click()}>
            Open a file
          </button>
          <a class="button" href={addressToOpen()}>
            Open a code
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
