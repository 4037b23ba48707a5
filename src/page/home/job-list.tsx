import { createMemo, createSignal, For, Show } from 'solid-js';
import type { ListRow } from '../../document/storage/row.ts';
import { SelectField } from '../fields/select-field.tsx';
import { addressOfSheet } from '../router.ts';
import type { Order, Shelf, ShopState } from '../state/shop.ts';
import { JobChecks } from './job-checks.tsx';

const SHELVES: Array<{ value: Shelf; label: string }> = [
  { value: 'jobs', label: 'jobs' },
  { value: 'templates', label: 'own templates' },
  { value: 'archived', label: 'put away' },
  { value: 'deleted', label: 'deleted' },
];
const ORDERS: Array<{ value: Order; label: string }> = [
  { value: 'changed', label: 'last worked on' },
  { value: 'title', label: 'title' },
  { value: 'machine', label: 'machine' },
  { value: 'customer', label: 'for whom' },
];

/** Jobs with a search; each can be opened, copied, put away, deleted and brought back. */
export const JobList = (props: { shop: ShopState }) => {
  const [query, setQuery] = createSignal('');
  const [shelf, setShelf] = createSignal<Shelf>('jobs');
  const [order, setOrder] = createSignal<Order>('changed');
  const rows = createMemo(() => props.shop.find(query(), shelf(), order()));
  return (
    <Show when={props.shop.any()}>
      <section>
        <h2>Jobs</h2>
        <div class="filters">
          <div class="field">
            <label for="job-search">Search</label>
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
        <ul class="jobs">
          <For
            each={rows()}
            fallback={
              <li class="job caption">{query() ? 'No job holds all of these words.' : 'None here.'}</li>
            }
          >
            {(row) => <Job row={row} shop={props.shop} />}
          </For>
        </ul>
      </section>
    </Show>
  );
};

const when = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

const Job = (props: { row: ListRow; shop: ShopState }) => {
  const { shop } = props.shop;
  const title = () => props.row.title.title || 'without a title';
  const what = () =>
    [props.row.title.part, props.row.title.machine, props.row.title.customer].filter(Boolean).join(' · ');
  return (
    <li class="job">
      <a href={addressOfSheet(props.row.id)}>{title()}</a>
      <span>{what()}</span>
      <span class="caption">{when.format(props.row.changed)}</span>
      <JobChecks row={props.row} />
      <fieldset class="buttons">
        <legend class="unseen">{title()}</legend>
        <Show
          when={props.row.removed === undefined}
          fallback={
            <>
              <button type="button" onClick={() => void shop.bringBack(props.row.id)}>
                Bring back
              </button>
              <button type="button" onClick={() => void shop.discard(props.row.id)}>
                Delete for good
              </button>
            </>
          }
        >
          <button type="button" onClick={() => void shop.duplicate(props.row.id)}>
            Copy
          </button>
          <button type="button" onClick={() => void shop.archive(props.row.id, !props.row.archived)}>
            {props.row.archived ? 'Take out' : 'Put away'}
          </button>
          <button type="button" onClick={() => void shop.remove(props.row.id)}>
            Delete
          </button>
        </Show>
      </fieldset>
    </li>
  );
};
