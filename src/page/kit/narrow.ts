import { type Accessor, createSignal, onCleanup } from 'solid-js';

/** A phone held upright; paper never is. */
export const createNarrow = (): Accessor<boolean> => {
  const query = matchMedia('screen and (max-width: 640px)');
  const [narrow, setNarrow] = createSignal(query.matches);
  const changed = () => setNarrow(query.matches);
  query.addEventListener('change', changed);
  onCleanup(() => query.removeEventListener('change', changed));
  return narrow;
};
