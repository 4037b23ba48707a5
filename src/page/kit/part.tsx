import { type JSX, Show } from 'solid-js';
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
  return (
    <Show
      when={narrow()}
      fallback={
        <section>
          <h3 class="part-head">{props.title}</h3>
          {props.children}
        </section>
      }
    >
      <details class="group" open={props.open === true}>
        <summary class="min-h-target cursor-pointer lined-b-rule leading-target group-open:(lined-b mb-2)">
          <h3 class="inline text-plain">{props.title}</h3>
        </summary>
        {props.children}
      </details>
    </Show>
  );
};
