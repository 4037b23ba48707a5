import { createSignal, onCleanup, Show } from 'solid-js';
import type { Shop } from '../../document/storage/shop.ts';

/** That the sheet lies among the deleted ones, put there in this or another tab, and the way back. */
export const TrashLine = (props: { shop: Shop; id: string }) => {
  const [removed, setRemoved] = createSignal(props.shop.row(props.id)?.removed);
  onCleanup(props.shop.observeList(() => setRemoved(props.shop.row(props.id)?.removed)));
  return (
    <Show when={removed() !== undefined}>
      <div class="trouble" role="alert">
        <p>
          This sheet has been deleted, here or in another tab. What you enter is kept, among the deleted
          sheets, until it is deleted for good.
        </p>
        <button type="button" onClick={() => void props.shop.bringBack(props.id)}>
          Bring it back
        </button>
      </div>
    </Show>
  );
};
