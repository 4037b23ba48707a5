import type { SheetFile } from '../../shared/sheet/format.ts';

/** A short job of the shingle mill: the bush of the countershaft, opened out to clean up. */
export const bushJob = (): SheetFile => ({
  format: 'fitwright-sheet',
  version: 2,
  title: { title: 'Countershaft bush', machine: 'shingle mill', tags: ['bush', 'countershaft'] },
  units: { length: 'in', ton: 'short_ton' },
  rule: 'iso14253-2013',
  cells: [
    { id: 'c1', role: 'section', label: 'The housing' },
    { id: 'c2', role: 'cell', name: 'bore_gauge', label: 'Bore gauge', kind: 'gauge', inputs: {} },
    {
      id: 'c3',
      role: 'measured',
      name: 'bore',
      label: 'Bore as found',
      entry: '2.2512; 2.2514 in',
      gauge: 'bore_gauge',
    },
    {
      id: 'c4',
      role: 'chosen',
      name: 'bush_od',
      label: 'Bush outside diameter',
      quantity: 'length',
      entry: '=bore + 0.003 in',
      tolerance: '+0.0005 -0 in',
      limits: { lower: '=bore + 0.002 in', upper: '=bore + 0.004 in', metalOn: 'high' },
      measured: { entry: '2.2541 in', gauge: 'bore_gauge' },
    },
    {
      id: 'c5',
      role: 'cell',
      name: 'press',
      label: 'Press fit',
      kind: 'interference-fit',
      edition: 1,
      inputs: { outer: '=bush_od', inner: '=bore', hub: 'bronze', gauge: 'bore_gauge' },
      outputs: { close_in: { limits: { upper: '=bore / 1000' }, display: 'thou' } },
      dismissed: [{ slip: 'turn', text: '=bush_od' }],
    },
    { id: 'c6', role: 'worked', name: 'bore_pressed', entry: '=bore - press.close_in', note: 'in {braces}' },
  ],
  variants: [{ name: 'heavier fit', entries: { bush_od: '=bore + 0.004 in', 'press.hub': 'iron' } }],
});
