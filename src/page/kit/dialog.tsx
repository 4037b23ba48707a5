import { createUniqueId, type JSX, onCleanup, onMount } from 'solid-js';

export interface DialogProps {
  title: string;
  onClose: () => void;
  class?: string;
  children: JSX.Element;
}

/** A sheet of paper over the page. Escape and a press outside close it; the focus goes back where it was. */
export const Dialog = (props: DialogProps) => {
  const id = createUniqueId();
  let element!: HTMLDialogElement;
  const before = document.activeElement;
  onMount(() => element.showModal());
  // A dialog that is taken away, not closed, leaves the focus nowhere.
  onCleanup(() =>
    queueMicrotask(() => {
      if (before instanceof HTMLElement && before.isConnected && document.activeElement === document.body)
        before.focus({ preventScroll: true });
    }),
  );
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: Escape closes a dialog by itself
    <dialog
      ref={element}
      class={`dialog ${props.class ?? ''}`}
      aria-labelledby={id}
      onClose={() => props.onClose()}
      onClick={(event) => {
        if (event.target === element) element.close();
      }}
    >
      <div class="stacked gap-3 p-3">
        <header class="flex items-center justify-between gap-3">
          <h2 id={id} class="text-head">
            {props.title}
          </h2>
          <button type="button" onClick={() => element.close()}>
            Close
          </button>
        </header>
        {props.children}
      </div>
    </dialog>
  );
};
