import { createMemo, createSignal, Show } from 'solid-js';
import { type Differences, differences } from '../../document/differences.ts';
import type { Revision } from '../../document/storage/vault.ts';
import { DifferencesList } from './differences-list.tsx';
import { fileOf } from './file-of.ts';

const summary = ({ cells, sheet, moved }: Differences): string => {
  const count = (n: number, one: string) => (n === 0 ? [] : [`${n} ${n === 1 ? one : `${one}s`}`]);
  const parts = [
    ...count(cells.length, 'line'),
    ...count(sheet.length, 'setting'),
    ...(moved ? ['the order'] : []),
  ];
  return parts.length > 0 ? `Changed: ${parts.join(', ')}` : 'Nothing changed';
};

/** What changed from one kept state to the next. */
export const Changes = (props: { revision: Revision; before: Revision | undefined }) => {
  const [open, setOpen] = createSignal(false);
  const found = createMemo(() => {
    const [from, to] = [props.before && fileOf(props.before), fileOf(props.revision)];
    return from && to ? differences(from, to) : undefined;
  });
  return (
    <Show when={found()} fallback={<p class="caption">The first state that was kept</p>}>
      {(all) => (
        <>
          <button
            type="button"
            class="plain"
            aria-expanded={open()}
            disabled={summary(all()) === 'Nothing changed'}
            onClick={() => setOpen(!open())}
          >
            {summary(all())}
          </button>
          <Show when={open()}>
            <DifferencesList differences={all()} none="Nothing changed." />
          </Show>
        </>
      )}
    </Show>
  );
};
