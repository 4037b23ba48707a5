import { type JSX, Show } from 'solid-js';
import { createNarrow } from './narrow.ts';
import './part.css';

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
          <h3>{props.title}</h3>
          {props.children}
        </section>
      }
    >
      <details class="part-fold" open={props.open === true}>
        <summary>
          <h3>{props.title}</h3>
        </summary>
        {props.children}
      </details>
    </Show>
  );
};
