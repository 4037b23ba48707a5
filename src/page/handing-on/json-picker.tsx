export interface JsonPickerProps {
  /** Clicked by whatever button opens it. */
  ref: HTMLInputElement | ((element: HTMLInputElement) => void);
  label: string;
  onFiles: (files: FileList | null) => void;
}

/** The browser's own choice of a file of ours; unseen, since its button looks like no other. */
export const JsonPicker = (props: JsonPickerProps) => (
  <input
    ref={props.ref as (element: HTMLInputElement) => void}
    type="file"
    class="unseen"
    tabindex={-1}
    aria-label={props.label}
    accept=".json,application/json"
    onChange={(event) => props.onFiles(event.currentTarget.files)}
    onClick={(event) => {
      // The same file chosen again is a change too.
      event.currentTarget.value = '';
    }}
  />
);
