import { For, Show } from 'solid-js';
import type { CellKind } from '../../../cells/record/cell.ts';
import { Formula } from './formula.tsx';

/** What must hold for the cell to be believed, and what it says where it does not. */
export const ValidityPart = (props: { kind: CellKind }) => (
  <Show when={props.kind.validity?.length}>
    <section>
      <h2 class="book-head">What must hold</h2>
      <ul>
        <For each={props.kind.validity}>
          {(one) => (
            <li class="py-2 lined-b-rule">
              <Formula text={one.holds} label={`What must hold, or else: ${one.otherwise}`} />
              <p>
                <b>{one.grade === 'error' ? 'Otherwise no result:' : 'Otherwise a caution:'}</b>{' '}
                {one.otherwise}
              </p>
            </li>
          )}
        </For>
      </ul>
    </section>
  </Show>
);
