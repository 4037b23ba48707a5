import { children, createEffect, createMemo, type JSX, on, Show } from 'solid-js';
import { createNarrow } from './narrow.ts';

export interface PartProps {
  title: string;
  /** Laid open on a phone too. */
  open?: boolean | undefined;
  children: JSX.Element;
}

/** A part of an unfolded line under its heading. On a phone a press on the heading lays it open, so that all are in sight. */
export const Part = (props: PartProps) => {
  const narrow = createNarrow();
  // The same elements either way: a phone that is turned keeps what is typed in them.
  const inside = children(() => props.children);
  const due = createMemo(() => props.open === true);
  const Folding = () => {
    let element!: HTMLDetailsElement;
    // Laid open when there is cause; folded by nobody but the user.
    createEffect(
      on(due, (now) => {
        if (now) element.open = true;
      }),
    );
    return (
      <details class="group" ref={element}>
        <summary class="min-h-target cursor-pointer lined-b-rule leading-target group-open:(lined-b mb-2)">
          <h3 class="inline text-plain">{props.title}</h3>
        </summary>
        {inside()}
      </details>
    );
  };
  return (
    <Show
      when={narrow()}
      fallback={
        <section>
          <h3 class="part-head">{props.title}</h3>
          {inside()}
        </section>
      }
    >
      <Folding />
    </Show>
  );
};
