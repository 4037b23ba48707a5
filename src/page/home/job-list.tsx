import { createEffect, createMemo, createSignal, For, on, Show } from 'solid-js';
import type { ListRow } from '../../document/storage/row.ts';
import { SelectField } from '../kit/select-field.tsx';
import { createNotices } from '../state/notices.ts';
import type { Order, Shelf, ShopState } from '../state/shop.ts';
import { createGrowing } from './growing.ts';
import { Job } from './job.tsx';
import { Marks } from './marks.tsx';
import { UndoLine } from './undo-line.tsx';

const SHELVES: Array<{ value: Shelf; label: string }> = [
  { value: 'jobs', label: 'jobs' },
  { value: 'templates', label: 'own templates' },
  { value: 'archived', label: 'archived' },
  { value: 'deleted', label: 'deleted' },
];
const ORDERS: Array<{ value: Order; label: string }> = [
  { value: 'changed', label: 'last worked on' },
  { value: 'created', label: 'begun last' },
  { value: 'title', label: 'title' },
  { value: 'part', label: 'part' },
  { value: 'machine', label: 'machine' },
  { value: 'customer', label: 'for whom' },
];

/** Jobs with a search; each can be opened, copied, put away, deleted and brought back. */
export const JobList = (props: { shop: ShopState }) => {
  const [query, setQuery] = createSignal('');
  const [shelf, setShelf] = createSignal<Shelf>('jobs');
  const [order, setOrder] = createSignal<Order>('changed');
  const [tags, setTags] = createSignal<readonly string[]>([]);
  const notices = createNotices();
  const rows = createMemo(() => props.shop.find(query(), shelf(), order(), tags()));
  const byId = createMemo(() => new Map(rows().map((row) => [row.id, row])));
  /** A sheet's row as it changes: what is asked in it stays open while the list follows another tab. */
  const follow = (id: string) => createMemo<ListRow>((last) => byId().get(id) ?? last, byId().get(id)!);
  const growing = createGrowing(() => [...byId().keys()]);
  createEffect(on([query, shelf, order, tags], growing.reset, { defer: true }));
  return (
    <Show when={props.shop.any()}>
      <section>
        <h2 class="heading mb-3">Jobs</h2>
        <div class="filters grid grid-cols-[minmax(12rem,3fr)_repeat(2,minmax(9rem,1fr))] gap-3 items-end mb-3 column:grid-cols-[1fr_1fr]">
          <div class="field column:col-span-full">
            <label for="job-search" class="caption">
              Search
            </label>
            <input id="job-search" type="search" onInput={(event) => setQuery(event.currentTarget.value)} />
          </div>
          <SelectField
            label="Show"
            value={shelf()}
            options={SHELVES}
            onCommit={(value) => setShelf(value as Shelf)}
          />
          <SelectField
            label="In order of"
            value={order()}
            options={ORDERS}
            onCommit={(value) => setOrder(value as Order)}
          />
        </div>
        <Marks all={props.shop.marks()} chosen={tags()} onChoose={setTags} />
        <p class="caption" role="status">
          {rows().length.toLocaleString()} {rows().length === 1 ? 'sheet' : 'sheets'}
        </p>
        <ul class="lined-t">
          <For
            each={growing.shown()}
            fallback={
              <li class="caption p-2 lined-b-rule">
                {query() ? 'No job holds all of these words.' : 'None here.'}
              </li>
            }
          >
            {(id) => {
              const row = follow(id);
              return <Job row={row()} shop={props.shop} notices={notices} />;
            }}
          </For>
        </ul>
        <Show when={growing.more()}>
          <button type="button" ref={growing.watch} onClick={growing.grow}>
            Show more
          </button>
        </Show>
        <UndoLine notices={notices} />
      </section>
    </Show>
  );
};
