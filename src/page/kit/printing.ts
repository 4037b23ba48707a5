import { createSignal, onCleanup } from 'solid-js';

/** True while the page is being put on paper. */
export const createPrinting = () => {
  const query = matchMedia('print');
  const [printing, setPrinting] = createSignal(query.matches);
  const follow = () => setPrinting(query.matches);
  const begin = () => setPrinting(true);
  const end = () => setPrinting(false);
  query.addEventListener('change', follow);
  addEventListener('beforeprint', begin);
  addEventListener('afterprint', end);
  onCleanup(() => {
    query.removeEventListener('change', follow);
    removeEventListener('beforeprint', begin);
    removeEventListener('afterprint', end);
  });
  return printing;
};
