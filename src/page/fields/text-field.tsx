import { createUniqueId, Show } from 'solid-js';
import './fields.css';

export interface TextFieldProps {
  label: string;
  value: string | undefined;
  /** Gives a message, as text or a promise of it, where it is refused; the field then keeps what was typed. Anything else means taken. */
  onCommit: (text: string) => unknown;
  placeholder?: string;
  hint?: string;
  type?: 'text' | 'date';
  /** Text that wraps; with more than one line Ctrl+Enter takes it. */
  lines?: number;
  disabled?: boolean;
  /** Called with the element, to give it the focus. */
  ref?: (element: HTMLInputElement | HTMLTextAreaElement) => void;
}

/** Plain text, taken on leaving the field or on Enter; Escape puts back what was there. */
export const TextField = (props: TextFieldProps) => {
  const id = createUniqueId();
  let note!: HTMLSpanElement;
  const commit = (element: HTMLInputElement | HTMLTextAreaElement) => {
    const text = element.value.trim();
    if (text === (props.value ?? '')) {
      note.textContent = '';
      return;
    }
    const tell = (refusal: unknown) => {
      note.textContent = typeof refusal === 'string' ? refusal : '';
    };
    const answer = props.onCommit(text);
    if (answer instanceof Promise) void answer.then(tell);
    else tell(answer);
  };
  const keys = (event: KeyboardEvent & { currentTarget: HTMLInputElement | HTMLTextAreaElement }) => {
    event.stopPropagation();
    if (event.key === 'Escape') {
      event.currentTarget.value = props.value ?? '';
      note.textContent = '';
    } else if (event.key === 'Enter' && ((props.lines ?? 1) === 1 || event.ctrlKey)) {
      event.preventDefault();
      commit(event.currentTarget);
    }
  };
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <Show
        when={props.lines}
        fallback={
          <input
            id={id}
            ref={props.ref}
            type={props.type ?? 'text'}
            value={props.value ?? ''}
            placeholder={props.placeholder}
            disabled={props.disabled}
            aria-describedby={`${id}-note`}
            autocomplete="off"
            onChange={(event) => commit(event.currentTarget)}
            onKeyDown={keys}
          />
        }
      >
        <textarea
          id={id}
          ref={props.ref}
          rows={props.lines}
          value={props.value ?? ''}
          placeholder={props.placeholder}
          disabled={props.disabled}
          aria-describedby={`${id}-note`}
          onChange={(event) => commit(event.currentTarget)}
          onKeyDown={keys}
        />
      </Show>
      <Show when={props.hint}>
        <span class="hint">{props.hint}</span>
      </Show>
      <span id={`${id}-note`} ref={note} class="hint refusal" role="status" />
    </div>
  );
};
