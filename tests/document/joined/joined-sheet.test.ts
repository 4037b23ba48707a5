import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { JoinedSheet } from '../../../src/document/joined/joined-sheet.ts';
import { fetchSheet, SharedList } from '../../../src/document/joined/shared-list.ts';
import { lineAddress, ShopLine } from '../../../src/document/joined/shop-line.ts';
import { SheetDocument } from '../../../src/document/sheet-document.ts';
import { KEY, type Relay, relay } from '../../shop-relay.ts';
import { bushJob } from '../sample.ts';

vi.stubGlobal('WebSocket', WebSocket);
afterAll(() => void vi.unstubAllGlobals());

let server: Relay;
const lines: ShopLine[] = [];
const until = (is: () => boolean) =>
  vi.waitFor(() => expect(is()).toBe(true), { timeout: 10_000, interval: 10 });

beforeEach(async () => {
  server = await relay();
});
afterEach(async () => {
  for (const line of lines.splice(0)) line.close();
  await server.stop();
});

const line = (key = KEY) => {
  const one = new ShopLine(lineAddress(`http://127.0.0.1:${server.port}/#/x`), key);
  lines.push(one);
  return one;
};
const join = (sheet: SheetDocument, key = KEY) =>
  new JoinedSheet(line(key), sheet, (update) => sheet.applyUpdate(update, 'remote'));

describe('a sheet at the shop’s server', () => {
  it('is at the server only when the server says so, and comes to another device', async () => {
    server.stores = false;
    const desk = SheetDocument.fromFile(bushJob());
    const at = join(desk);
    await until(() => at.state.get().line === 'open');
    await until(() => server.document(`sheet.${desk.id}`)?.getMap('cells').size === 6);
    expect(at.state.get().atServer).toBe(false);
    server.stores = true;
    desk.setEntry('c3', '2.2512; 2.2514; 2.2516 in');
    await until(() => at.state.get().atServer);
    // A field taken away moves no state vector: it is on its way all the same.
    server.stores = false;
    desk.setField('c4', 'tolerance', '');
    expect(at.state.get().atServer).toBe(false);
    server.stores = true;
    await until(() => at.state.get().atServer);
    // What another wrote came here before it was stored: the page asks again until it is.
    server.lags = 3;
    desk.setEntry('c3', '2.2512; 2.2514; 2.2518 in');
    await until(() => server.lags < 0 && at.state.get().atServer);
    const came = await fetchSheet(line(), desk.id);
    const phone = new SheetDocument(desk.id);
    phone.applyUpdate(came as Uint8Array, 'load');
    expect(phone.toFile()).toEqual(desk.toFile());
  });

  it('takes in what was entered while the line was lost, on both sides', async () => {
    const desk = SheetDocument.fromFile(bushJob());
    const at = join(desk);
    await until(() => at.state.get().atServer);
    const phone = new SheetDocument(desk.id);
    phone.applyUpdate(desk.updateSince(), 'load');
    const there = join(phone);
    await until(() => there.state.get().atServer);
    server.drop();
    await until(() => at.state.get().line === 'away' && there.state.get().line === 'away');
    expect(at.state.get().atServer).toBe(false);
    desk.setEntry('c3', '2.2512; 2.2514; 2.2516 in');
    phone.setEntry('c3', '2.2512; 2.2514; 2.2518 in');
    await until(() => at.state.get().atServer && there.state.get().atServer);
    await until(() => phone.cell('c3')!.entry === desk.cell('c3')!.entry);
    expect(phone.cell('c3')!.entry).toContain('2.2516');
    expect(phone.cell('c3')!.entry).toContain('2.2518');
  });

  it('tells who else is there, and where', async () => {
    const desk = SheetDocument.fromFile(bushJob());
    const phone = new SheetDocument(desk.id);
    phone.applyUpdate(desk.updateSince(), 'load');
    const [at, there] = [join(desk), join(phone)];
    await until(() => at.state.get().line === 'open' && there.state.get().line === 'open');
    there.tell({ device: 'Bench', line: 'c3', typing: 'entry' });
    await until(() => at.others.get().length === 1);
    expect(at.others.get()).toEqual([
      { device: 'Bench', line: 'c3', typing: 'entry', edits: phone.clientId },
    ]);
    there.close();
    await until(() => at.others.get().length === 0);
  });

  it.each([
    ['key-unknown', undefined],
    ['key-ended', { ended: true }],
    ['key-other-sheet', { sheet: 'another' }],
  ] as const)('is refused to a key that does not open it (%s), and shows nothing', async (why, right) => {
    const key = 'B'.repeat(22);
    if (right) server.keys.set(key, right);
    const desk = SheetDocument.fromFile(bushJob());
    const at = join(desk);
    await until(() => at.state.get().atServer);
    expect(await fetchSheet(line(key), desk.id)).toBe(why);
    const list = SharedList.over(line(key));
    expect(await list.answered()).toEqual({
      line: 'ended',
      ended: why,
      readOnly: false,
      sheets: [],
      equipment: [],
    });
    list.close();
  });

  it('sends nothing by a key that only reads', async () => {
    const key = 'R'.repeat(22);
    server.keys.set(key, { readOnly: true });
    const desk = SheetDocument.fromFile(bushJob());
    const at = join(desk);
    await until(() => at.state.get().atServer);
    const guest = new SheetDocument(desk.id);
    guest.applyUpdate(desk.updateSince(), 'load');
    const there = join(guest, key);
    await until(() => there.state.get().readOnly);
    desk.setEntry('c3', '2.2522 in');
    await until(() => guest.cell('c3')!.entry === '2.2522 in');
    guest.refuse = () => undefined;
    expect(() => guest.setEntry('c3', '2.3 in')).toThrow('only to be read');
    expect(guest.cell('c3')!.entry).toBe('2.2522 in');
  });

  it.each([
    ['a foreign shared type', (doc: Y.Doc) => doc.getMap('other').set('a', 1)],
    ['a type nested in a field', (doc: Y.Doc) => cell(doc).set('entry', new Y.Text('2.3 in'))],
    ['a field that departs from the schema', (doc: Y.Doc) => cell(doc).set('role', 'proven')],
    ['a reading that is none', (doc: Y.Doc) => cell(doc).set('entry#x', { text: '=1' })],
    ['a key of the workings of objects', (doc: Y.Doc) => cell(doc).set('limits.__proto__', '1')],
    ['a line that is no map', (doc: Y.Doc) => (doc.getMap('cells') as Y.Map<unknown>).set('c9', 'x')],
  ])('is not shown %s, whoever sends it, and lets go', async (_, spoil) => {
    const desk = SheetDocument.fromFile(bushJob());
    const at = join(desk);
    await until(() => at.state.get().atServer);
    const before = desk.toFile();
    spoil(server.document(`sheet.${desk.id}`)!);
    await until(() => at.state.get().line === 'ended');
    expect(at.state.get().ended).toBe('unsound');
    expect(desk.toFile()).toEqual(before);
    desk.setEntry('c3', '2.2522 in');
    expect(desk.cell('c3')!.entry).toBe('2.2522 in');
  });
});

const cell = (doc: Y.Doc) => doc.getMap('cells').get('c3') as Y.Map<unknown>;

it('the list of what is shared is the same on every device', async () => {
  const [desk, phone] = [SharedList.over(line()), SharedList.over(line())];
  await Promise.all([desk.answered(), phone.answered()]);
  desk.put('s1', { title: 'Countershaft bush', template: false, by: 'Desk', since: 1 });
  await until(() => phone.state.get().sheets.length === 1);
  expect(phone.state.get().sheets[0]).toMatchObject({ id: 's1', title: 'Countershaft bush', by: 'Desk' });
  server.document('list')!.getMap('shared').set('bad id', { title: 3 });
  phone.put('s1', { title: 'Countershaft bush', template: false, by: 'Desk', since: 1, ended: true });
  await until(() => desk.state.get().sheets[0]?.ended === true);
  expect(desk.state.get().sheets).toHaveLength(1);
  // Two who ask over one line hear the same, and one that goes takes nothing from the other.
  const one = line();
  const [page, dialog] = [SharedList.over(one), SharedList.over(one)];
  await dialog.answered();
  dialog.close();
  phone.put('s2', { title: 'Pump shaft', template: false, by: 'Phone', since: 2 });
  await until(() => page.state.get().sheets.length === 2);
  page.close();
  desk.close();
  phone.close();
});

describe('the shop’s own gauges and metals on the list', () => {
  const gauge = (label: string, certificate: string, by = 'Desk') =>
    ({ kind: 'gauge', label, inputs: { certificate }, by, since: 1 }) as const;
  const two = async () => {
    const lists = [SharedList.over(line()), SharedList.over(line())] as const;
    await Promise.all(lists.map((list) => list.answered()));
    return lists;
  };
  const own = (list: SharedList) =>
    [...list.state.get().equipment].map(({ id, label, inputs, ended }) => [
      id,
      label,
      inputs.certificate,
      ended,
    ]);

  it('that two devices share at once stand both, and each is told once it is stored', async () => {
    const [desk, phone] = await two();
    server.stores = false;
    const at = desk.putEquipment([['e1', gauge('No. 4', '1 um')]]);
    expect(desk.state.get().equipment[0]).toMatchObject({ id: 'e1', onItsWay: true });
    await until(() => phone.state.get().equipment.length === 1);
    expect(phone.state.get().equipment[0]).not.toHaveProperty('onItsWay');
    expect(desk.state.get().equipment[0]).toHaveProperty('onItsWay');
    server.stores = true;
    // The next mark answers for all before it.
    const there = desk.putEquipment([['e2', gauge('No. 4', '2 um')]]);
    expect(await Promise.all([at, there, phone.putEquipment([['e3', gauge('Bore gauge', '3 um')]])])).toEqual(
      [undefined, undefined, undefined],
    );
    await until(() => desk.state.get().equipment.length === 3 && phone.state.get().equipment.length === 3);
    expect(own(desk).sort()).toEqual(own(phone).sort());
    expect(desk.state.get().equipment.every(({ onItsWay }) => !onItsWay)).toBe(true);
    expect(server.document('list')!.getMap('shared').size).toBe(0);
    desk.close();
    phone.close();
  });

  it('that are shared apart come together; one ended while it is shared anew is one of the two on both', async () => {
    const [desk, phone] = await two();
    await desk.putEquipment([['e1', gauge('No. 4', '1 um')]]);
    await until(() => phone.state.get().equipment.length === 1);
    server.drop();
    await until(() => desk.state.get().line === 'away' && phone.state.get().line === 'away');
    const puts = [
      desk.putEquipment([['e1', { ...gauge('No. 4', '1 um'), ended: true }]]),
      desk.putEquipment([['e2', gauge('No. 5', '2 um')]]),
      phone.putEquipment([['e1', gauge('No. 4', '1 um', 'Phone')]]),
      phone.putEquipment([['e3', gauge('No. 6', '3 um')]]),
    ];
    expect(own(desk)).toHaveLength(2);
    expect(await Promise.all(puts)).toEqual([undefined, undefined, undefined, undefined]);
    await until(() => desk.state.get().equipment.length === 3 && phone.state.get().equipment.length === 3);
    await until(() => JSON.stringify(own(desk).sort()) === JSON.stringify(own(phone).sort()));
    desk.close();
    phone.close();
  });

  it('are not shown where they are none, and by a key that only reads nothing is put', async () => {
    const [desk, phone] = await two();
    await desk.putEquipment([['e1', gauge('No. 4', '1 um')]]);
    const map = server.document('list')!.getMap('equipment');
    map.set('e2', { ...gauge('No. 5', '=bore') });
    map.set('bad id', gauge('No. 6', '1 um'));
    map.set('e3', { ...gauge('No. 7', '1 um'), more: 1 });
    map.set('e4', gauge('No. 8', '4 um'));
    await until(() => own(phone).length === 2);
    expect(
      own(phone)
        .map(([id]) => id)
        .sort(),
    ).toEqual(['e1', 'e4']);
    const key = 'R'.repeat(22);
    server.keys.set(key, { readOnly: true });
    const reader = SharedList.over(line(key));
    await reader.answered();
    await until(() => reader.state.get().equipment.length === 2);
    expect(await reader.putEquipment([['e5', gauge('No. 9', '1 um')]])).toBe('key-reads-only');
    expect(own(reader)).toHaveLength(2);
    for (const list of [desk, phone, reader]) list.close();
  });

  it('find no room on a list that is full of what is shared; what is shared no longer gives way', async () => {
    const [desk, phone] = await two();
    const all = Array.from({ length: 400 }, (_, i) => [`e${i}`, gauge(`No. ${i}`, `${i + 1} um`)] as const);
    expect(await desk.putEquipment(all)).toBeUndefined();
    expect(await desk.putEquipment([['e400', gauge('one more', '1 mm')]])).toBe('full');
    // What stands there is ended and shared anew all the same.
    await desk.putEquipment([['e7', { ...all[7]![1], ended: true }]]);
    expect(await desk.putEquipment([['e400', gauge('one more', '1 mm')]])).toBeUndefined();
    await until(() => phone.state.get().equipment.some(({ id }) => id === 'e400'));
    expect(phone.state.get().equipment).toHaveLength(400);
    desk.close();
    phone.close();
  });
});
