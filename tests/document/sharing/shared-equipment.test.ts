import { describe, expect, it } from 'vitest';
import { library } from '../../../cells/catalogue.ts';
import { equipmentIn } from '../../../src/document/sharing/own-equipment.ts';
import {
  type ListedEquipment,
  listedOf,
  namesake,
  offeredBy,
  roomOn,
  sharedEquipmentIn,
  toBeShared,
} from '../../../src/document/sharing/shared-equipment.ts';

const micrometer = {
  kind: 'gauge',
  label: 'No. 4',
  inputs: { gauge: 'micrometer-1-2-in', certificate: '0.00004 in', correction: '-0.0001 in' },
};
const listed = (id: string, part: Partial<ListedEquipment> = {}): ListedEquipment => ({
  ...micrometer,
  by: 'Desk',
  since: 1,
  id,
  ...part,
});
const { id: _id, ...good } = listed('a');

describe('a gauge on the list of what is shared', () => {
  it('is read as it was shared, whatever the library lets be kept', () => {
    expect(sharedEquipmentIn(good)).toEqual(good);
    expect(sharedEquipmentIn({ ...good, ended: true })).toEqual({ ...good, ended: true });
    expect(sharedEquipmentIn({ ...good, ended: false })).toEqual(good);
    // What a line has of each kind is shared whole.
    for (const kind of ['gauge', 'bush-press', 'material']) {
      const own = library.kinds.get(kind)!.inputs.filter(({ ofShop }) => ofShop);
      const inputs = Object.fromEntries(own.map(({ name }) => [name, '12.5 mm']));
      const one = equipmentIn({ id: 'c1', role: 'cell', kind, label: 'Ours', inputs }, () => own)!;
      expect(toBeShared(one, 'Desk', 1)?.inputs, kind).toEqual(inputs);
    }
  });

  it.each<[string, unknown]>([
    ['nothing', undefined],
    ['a text', 'gauge'],
    ['a list', [good]],
    ['more than it says', { ...good, role: 'proven' }],
    ['no kind', { ...good, kind: '' }],
    ['a kind that is none', { ...good, kind: '../gauge' }],
    ['a kind of the workings of objects', { ...good, kind: 'constructor' }],
    ['a label that is none', { ...good, label: 4 }],
    ['a label too long', { ...good, label: 'x'.repeat(201) }],
    ['a device too long', { ...good, by: 'x'.repeat(41) }],
    ['no time', { ...good, since: Number.POSITIVE_INFINITY }],
    ['a time in words', { ...good, since: '1' }],
    ['an end in words', { ...good, ended: 'no' }],
    ['no figures', { ...good, inputs: {} }],
    ['a list of figures', { ...good, inputs: ['0.1 mm'] }],
    ['a number for a figure', { ...good, inputs: { certificate: 0.1 } }],
    ['a figure that is empty', { ...good, inputs: { certificate: '' } }],
    ['a formula', { ...good, inputs: { certificate: '=bore' } }],
    ['a formula behind a space', { ...good, inputs: { certificate: ' =bore' } }],
    ['a formula behind a line end', { ...good, inputs: { certificate: '\n=bore' } }],
    ['a figure too long', { ...good, inputs: { certificate: '1'.repeat(501) } }],
    ['a figure of no name', { ...good, inputs: { '': '1 mm' } }],
    ['a path for a name', { ...good, inputs: { 'a.b': '1 mm' } }],
    ['a name of the workings of objects', { ...good, inputs: { constructor: '1 mm' } }],
    ['the prototype', { ...good, inputs: JSON.parse('{"__proto__": "1 mm"}') }],
    [
      'too many figures',
      { ...good, inputs: Object.fromEntries(Array.from({ length: 41 }, (_, i) => [`a${i}`, '1 mm'])) },
    ],
  ])('is none that says %s', (_, value) => {
    expect(sharedEquipmentIn(value)).toBeUndefined();
  });

  it('too long to be shared is not cut short: a figure cut is another figure', () => {
    expect(
      toBeShared({ ...micrometer, inputs: { certificate: '1'.repeat(501) } }, 'Desk', 1),
    ).toBeUndefined();
    // Where it came from is no part of it.
    expect(toBeShared({ ...micrometer, from: 'Bench' }, 'D'.repeat(60), 1)).toEqual({
      ...good,
      by: 'D'.repeat(40),
    });
  });

  it('is known by its figures: shared twice it is one, ended once it is shared still, other figures are another', () => {
    const twice = [listed('b', { by: 'Bench', since: 2 }), listed('a')];
    expect(listedOf(twice, micrometer).map(({ id }) => id)).toEqual(['a', 'b']);
    expect(offeredBy(twice, []).map(({ id }) => id)).toEqual(['a']);
    expect(listedOf([{ ...twice[1]!, ended: true }, twice[0]!], micrometer)[0]!.id).toBe('b');
    expect(offeredBy(twice, [{ ...micrometer, label: 'as we call it' }])).toEqual([]);
    expect(offeredBy([listed('a', { ended: true })], [])).toEqual([]);

    // The same name and other figures: nothing of what is kept is replaced, and it is said.
    const other = listed('c', { inputs: { ...micrometer.inputs, correction: '+0.0001 in' } });
    expect(offeredBy([other], [micrometer])).toEqual([other]);
    expect(listedOf([other], micrometer)).toEqual([]);
    expect(namesake([micrometer], other)).toBe(micrometer);
    expect(namesake([micrometer], listed('d'))).toBeUndefined();
    expect(namesake([{ ...micrometer, label: '' }], { ...other, label: '' })).toBeUndefined();
  });

  it('has room made for it by what is shared no longer, the oldest first, and by nothing else', () => {
    const list = [
      listed('a', { ended: true, since: 3 }),
      listed('b', { ended: true, since: 2 }),
      listed('c'),
    ];
    expect(roomOn(list, 4)).toEqual([]);
    expect(roomOn(list, 3)).toEqual(['b']);
    expect(roomOn(list, 2)).toEqual(['b', 'a']);
    expect(roomOn(list, 1)).toBeUndefined();
  });
});
