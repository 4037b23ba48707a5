import { createUniqueId, Show, untrack } from 'solid-js';
import { afterPointer } from './pointer.ts';
import { asPageGoes, onResume, putTypedAside, type TypedPlace, typeInto } from './typed-aside.ts';

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
  /** Where what is refused is kept under, with the word why: the field may be drawn anew before it is put right. */
  draft?: string;
  /** Which text of which sheet it is: what is typed and not taken as the page goes is offered again. */
  aside?: TypedPlace & { sheet: string };
  /** Called with the element, to give it the focus. */
  ref?: (element: HTMLInputElement | HTMLTextAreaElement) => void;
}

const refused = new Map<string, { text: string; why: string }>();

/** Plain text, taken on leaving the field or on Enter; Escape puts back what was there. */
export const TextField = (props: TextFieldProps) => {
  const id = createUniqueId();
  let note!: HTMLSpanElement;
  const draft = () => (props.draft === undefined ? undefined : refused.get(props.draft));
  const shown = () => draft()?.text ?? props.value ?? '';
  let element: HTMLInputElement | HTMLTextAreaElement | undefined;
  /** What stood there when the field got the focus. */
  let openedOn: string | undefined;
  /** Typed here, not taken: somebody else wrote meanwhile. */
  let unsettled = false;
  /** What comes from elsewhere does not wipe out what is being typed. */
  const standing = () => {
    const text = shown();
    if (!element) return text;
    return unsettled || isTyping(element) ? element.value : text;
  };
  const isTyping = (it: HTMLElement & { value: string }) =>
    document.activeElement === it && openedOn !== undefined && it.value !== openedOn;
  const putAside = () => {
    const own = props.aside;
    const text = element?.value.trim();
    if (own && element && text && (unsettled || isTyping(element))) putTypedAside(own.sheet, own, text);
  };
  asPageGoes(putAside);
  onResume(
    () => props.aside,
    (text) => element && typeInto(element, text),
  );
  const hold = (it: HTMLInputElement | HTMLTextAreaElement) => {
    element = it;
    props.ref?.(it);
  };
  const open = () => {
    openedOn = props.value ?? '';
  };
  const forget = () => {
    unsettled = false;
    note.textContent = '';
    if (props.draft !== undefined) refused.delete(props.draft);
  };
  const commit = (element: HTMLInputElement | HTMLTextAreaElement) => {
    const text = element.value.trim();
    const now = props.value ?? '';
    const before = openedOn ?? now;
    forget();
    openedOn = now;
    if (text === now) return;
    if (text === before.trim()) {
      element.value = now;
      return;
    }
    if (before !== now) {
      unsettled = true;
      note.textContent = `“${now}” was entered here meanwhile, in another place. Enter again takes what you typed, Escape leaves theirs.`;
      return;
    }
    openedOn = text;
    const tell = (refusal: unknown) => {
      if (typeof refusal !== 'string') return;
      // Refused, it stands on what stood there before: tried again, it is tried as new.
      openedOn = now;
      note.textContent = refusal;
      if (props.draft !== undefined) refused.set(props.draft, { text, why: refusal });
    };
    const answer = props.onCommit(text);
    if (answer instanceof Promise) void answer.then(tell);
    else tell(answer);
  };
  // Left by a press, what is taken may move what is pressed.
  const changed = ({ currentTarget }: { currentTarget: HTMLInputElement | HTMLTextAreaElement }) =>
    afterPointer(() => commit(currentTarget));
  const keys = (event: KeyboardEvent & { currentTarget: HTMLInputElement | HTMLTextAreaElement }) => {
    event.stopPropagation();
    if (event.key === 'Escape') {
      forget();
      open();
      event.currentTarget.value = props.value ?? '';
    } else if (event.key === 'Enter' && ((props.lines ?? 1) === 1 || event.ctrlKey)) {
      event.preventDefault();
      commit(event.currentTarget);
    }
  };
  return (
    <div class="field">
      <label for={id} class="caption">
        {props.label}
      </label>
      <Show
        when={props.lines}
        fallback={
          <input
            id={id}
            ref={hold}
            type={props.type ?? 'text'}
            value={standing()}
            placeholder={props.placeholder}
            disabled={props.disabled}
            aria-describedby={`${id}-note`}
            autocomplete="off"
            onFocus={open}
            onChange={changed}
            onKeyDown={keys}
          />
        }
      >
        <textarea
          id={id}
          ref={hold}
          rows={props.lines}
          value={standing()}
          placeholder={props.placeholder}
          disabled={props.disabled}
          aria-describedby={`${id}-note`}
          onFocus={open}
          onChange={changed}
          onKeyDown={keys}
        />
      </Show>
      <Show when={props.hint}>
        <span class="hint caption">{props.hint}</span>
      </Show>
      <span
        id={`${id}-note`}
        ref={note}
        class="hint refusal caption [.title-block_&]:empty:hidden"
        role="status"
      >
        {untrack(draft)?.why}
      </span>
    </div>
  );
};
