import { defineCell } from '../record/cell.ts';
import { honing, reaming } from '../record/hazards.ts';

export default defineCell({
  key: 'finishing-stock',
  edition: 1,
  title: 'Bush bore to cut before pressing',
  purpose: 'Bore to give a bush before it is pressed, finished beforehand or finished in place.',
  group: 'bore and shaft',
  inputs: [
    { name: 'finished_bore', label: 'bore wanted in the end', quantity: 'length', sensible: ['2 mm', '1 m'] },
    {
      name: 'close_in',
      label: 'bore closes in by, when pressed',
      quantity: 'length',
      sensible: ['0 mm', '1 mm'],
      hint: 'Of the cell of the close-in: = close.close_in',
    },
    {
      name: 'stock',
      label: 'finishing stock, on the diameter',
      quantity: 'length',
      sensible: ['0 mm', '2 mm'],
      hint: 'What the reamer, hone or boring tool needs to clean up the pressed bore.',
    },
    {
      name: 'outside',
      label: 'outside diameter of the bush',
      quantity: 'length',
      sensible: ['3 mm', '1 m'],
    },
  ],
  outputs: [
    {
      name: 'cut_finished_before',
      label: 'cut to, finished before pressing',
      quantity: 'length',
      basis: 'model',
      ofPart: true,
      formula: '=finished_bore + close_in',
      face: true,
      hint: 'The pressing brings it to size: its doubt stays in the bore.',
    },
    {
      name: 'cut_finished_in_place',
      label: 'cut to, pressed and then finished in place',
      quantity: 'length',
      basis: 'model',
      ofPart: true,
      formula: '=finished_bore + close_in - stock',
      face: true,
      hint: 'Leaves the stock on after pressing.',
    },
    {
      name: 'pressed_bore',
      label: 'bore when pressed, before finishing in place',
      quantity: 'length',
      basis: 'model',
      ofPart: true,
      formula: '=finished_bore - stock',
    },
    {
      name: 'wall',
      label: 'wall of the finished bush',
      quantity: 'length',
      basis: 'geometry',
      formula: '=(outside - finished_bore) / 2',
    },
  ],
  validity: [
    { holds: '=finished_bore > 0 mm', otherwise: 'A bore is above zero.', grade: 'error' },
    {
      holds: '=close_in >= 0 mm',
      otherwise: 'Pressing never opens a bore: see that the close-in is not below zero.',
      grade: 'error',
    },
    { holds: '=stock >= 0 mm', otherwise: 'Stock is not below zero.', grade: 'error' },
    {
      holds: '=outside > finished_bore',
      otherwise: 'The bush is not larger outside than inside.',
      grade: 'error',
    },
    {
      holds: '=stock > 0 mm',
      otherwise: 'Without stock there is nothing to finish in place: the bore comes out as pressed.',
      grade: 'caution',
    },
    {
      holds: '=close_in <= wall / 20',
      otherwise: 'The close-in is large for this wall: look at interference and sizes.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'The bush stays round and closes evenly; grooves, holes and a split let it close otherwise.',
    'Sizes at one temperature. The cut itself has its own tolerance: put it on the cell of the size you cut.',
  ],
  sources: ['Bore after pressing = bore before - close-in', 'Both routes: common practice, no source'],
  cautions: [
    'Porous and filled bushes are usually sized by a burnisher and not cut: their maker’s word comes first.',
    'Where the metal holds lead or beryllium (its cell says so): no dry grinding or polishing; keep dust out of the air and wash before eating.',
    reaming,
    honing,
  ],
  examples: [
    {
      title: 'Cylinder rebored to piston and clearance, less what the hone takes',
      source:
        'an engine maker’s service manual: D = A + B - C, piston 78.453 mm, clearance 0.03 mm of 0.02 to 0.04, honing 0.02 mm; the sum is not printed',
      grade: 'computed',
      inputs: {
        finished_bore: '= 78.453 mm + 0.03 mm',
        close_in: '0 mm',
        stock: '0.02 mm',
        outside: '86 mm',
      },
      expect: { cut_finished_in_place: { value: '78.463 mm', within: 1e-9 } },
    },
    {
      title: 'Wanted 1.7525 in, closes in by 2.2 thou, 8 thou stock',
      source: 'by hand: 1.7525 + 0.0022 = 1.7547; less 0.008 = 1.7467',
      grade: 'recomputed',
      inputs: { finished_bore: '1.7525 in', close_in: '2.2 thou', stock: '8 thou', outside: '2.279 in' },
      expect: {
        cut_finished_before: { value: '1.7547 in', within: 1e-9 },
        cut_finished_in_place: { value: '1.7467 in', within: 1e-9 },
        pressed_bore: { value: '1.7445 in', within: 1e-9 },
      },
    },
  ],
});
