import { bench, describe } from 'vitest';
import { searchForm } from '../../shared/search-form.ts';
import { ShopList } from '../../src/document/storage/list.ts';
import type { ListRow } from '../../src/document/storage/row.ts';

/** Ten thousand jobs with the words of real ones: some 40 labels and names each. `npx vitest bench --run tests/bench`. */
const WORDS =
  'bush bore journal housing arbor countershaft gearbox pump shaft press fit clearance end float shim reamed ground undersize bronze iron steel pulley coupling drive outboard thrust washer key sleeve seat shell crush taper'.split(
    ' ',
  );
const word = (n: number): string => WORDS[(n * 7919) % WORDS.length]!;

const rows = Array.from({ length: 10_000 }, (_, k): ListRow => {
  const title = {
    title: `${word(k)} ${word(k + 1)} ${k}`,
    machine: `machine ${k % 37}`,
    customer: `shop ${k % 113}`,
  };
  const labels = Array.from(
    { length: 80 },
    (_, n) => `${word(k + n)} ${word(k * n + 3)} ${n % 4 ? '' : `line_${n}`}`,
  );
  return {
    id: `job-${k}`,
    title,
    template: k % 20 === 0,
    archived: k % 9 === 0,
    created: k,
    changed: (k * 7907) % 10_007,
    cells: 40,
    search: searchForm([...Object.values(title), ...labels].join('\n')),
  };
});
const list = new ShopList(rows);
list.find('');

describe('search among ten thousand jobs', () => {
  for (const query of ['', 'bush', 'pump shaft gr', 'machine 3 clearance', 'no such word anywhere']) {
    bench(`"${query}"`, () => void list.find(query, { template: false, sort: 'title' }));
  }
  bench('the first one after a change, which sorts', () => {
    list.show('job-1', { ...rows[1]!, changed: Date.now() });
    list.find('bush', { sort: 'title' });
  });
});
