import { afterEach, describe, expect, it } from 'vitest';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import { emptyReplica, faultIn, type StoredFault } from '../../src/document/model/stored-fault.ts';
import { LIST_DOCUMENT, SYNC_PATH, sheetDocument, tokenOf } from '../../src/document/sharing/wire.ts';
import { Shadow } from '../../src/shop/sync/shadow.ts';
import { Draw } from '../engine/slips/draw.ts';
import { walk } from '../walk.ts';
import { authFrame, syncFrame } from './raw.ts';
import { Device, dropFolder, type Served, served } from './served.ts';

const SHEET = sheetDocument('saw-arbor');

const honest = (): Y.Doc => {
  const doc = emptyReplica();
  const cells = doc.getMap<Y.Map<unknown>>('cells');
  for (let i = 0; i < 6; i += 1) {
    const cell = new Y.Map<unknown>();
    cell.set('label', `line ${i}`);
    cell.set('entry', `${i}.25 in`);
    cell.set('#order', `a${i}`);
    cells.set(`c${i}`, cell);
  }
  cells.get('c1')!.set('entry', '7 in');
  doc.getMap('sheet').set('title.title', 'Saw arbor');
  return doc;
};

/** An update of a device that has seen the sheet, and writes what no page writes. */
const written = (base: Uint8Array, write: (doc: Y.Doc) => void): Uint8Array => {
  const doc = new Y.Doc();
  Y.applyUpdate(doc, base);
  const before = Y.encodeStateVector(doc);
  write(doc);
  return Y.encodeStateAsUpdate(doc, before);
};

const cellOf = (doc: Y.Doc, id = 'c1') => doc.getMap<Y.Map<unknown>>('cells').get(id)!;

const deep = (levels: number): unknown => (levels === 0 ? 1 : [deep(levels - 1)]);

/** Everything here is well formed for Yjs, and is nothing that a sheet holds. */
const CRAFTED: Array<[string, (doc: Y.Doc) => void]> = [
  ['a foreign shared type', (doc) => doc.getMap('other').set('x', 1)],
  ['a foreign text', (doc) => doc.getText('note').insert(0, 'x'.repeat(1000))],
  ['a list where the lines are', (doc) => doc.getArray('cells').push([1])],
  ['a line that is a text', (doc) => doc.getMap('cells').set('x', 'line')],
  ['a line that is a list', (doc) => doc.getMap('cells').set('x', new Y.Array())],
  ['a line that is taken away', (doc) => doc.getMap('cells').delete('c1')],
  [
    'a line that holds a list beside its fields',
    (doc) => {
      const line = new Y.Map<unknown>();
      doc.getMap('cells').set('x', line);
      Y.Array.prototype.push.call(line as never, ['hidden']);
    },
  ],
  ['a line with a name too long', (doc) => doc.getMap('cells').set('x'.repeat(65), new Y.Map())],
  ['a map within a line', (doc) => cellOf(doc).set('entry', new Y.Map())],
  ['a document within a line', (doc) => cellOf(doc).set('entry', new Y.Doc())],
  ['bytes', (doc) => cellOf(doc).set('entry', new Uint8Array(10))],
  ['a number for a text', (doc) => cellOf(doc).set('entry', 12)],
  ['a text too long', (doc) => cellOf(doc).set('entry', 'x'.repeat(200_001))],
  ['a key too long', (doc) => cellOf(doc).set('k'.repeat(301), 'x')],
  ['a key that is none', (doc) => cellOf(doc).set('', 'x')],
  ['a key of the prototype', (doc) => cellOf(doc).set('__proto__.polluted', 'x')],
  ['a constructor', (doc) => cellOf(doc).set('limits.constructor', 'x')],
  ['an order that is none', (doc) => cellOf(doc).set('#order', '!')],
  ['a deletion that is none', (doc) => cellOf(doc).set('#gone', 'yes')],
  [
    'a reading that is none',
    (doc) => cellOf(doc).set('entry#r1', { place: 0, at: 'a', text: '1', unit: '' }),
  ],
  ['a value nested deep', (doc) => cellOf(doc).set('later', deep(200))],
  ['a value nested deeper than a stack', (doc) => cellOf(doc).set('later', deep(3000))],
  ['a whole number of any length', (doc) => cellOf(doc).set('later', 10n)],
  ['a setting of the sheet that is none', (doc) => doc.getMap('sheet').set('title.title', 3)],
  [
    'writes to one place that are slow to order',
    (doc) => {
      for (let i = 0; i < 300; i += 1) {
        const other = new Y.Doc();
        other.getMap('sheet').set('title.part', `${i}`);
        Y.applyUpdate(doc, Y.encodeStateAsUpdate(other));
      }
    },
  ],
];

describe('an update that no page writes', () => {
  it.each(CRAFTED)('%s is refused, and nothing of it remains', (_, write) => {
    const shadow = new Shadow(SHEET, 500_000);
    const base = Y.encodeStateAsUpdate(honest());
    expect(shadow.take(base)).not.toHaveProperty('fault');
    const before = [shadow.doc.toJSON(), Y.encodeStateVector(shadow.doc)];
    expect(shadow.take(written(base, write))).toHaveProperty('fault');
    expect([shadow.doc.toJSON(), Y.encodeStateVector(shadow.doc)]).toEqual(before);
    expect([...shadow.doc.share.keys()].sort()).toEqual(['cells', 'sheet']);
    // And what comes after is taken as if nothing had been.
    const next = written(base, (doc) => cellOf(doc).set('entry', '8 in'));
    expect(shadow.take(next)).not.toHaveProperty('fault');
    expect(cellOf(shadow.doc).get('entry')).toBe('8 in');
    shadow.end();
  });

  it('an item known in part is taken where it goes on in its place, and refused where it is of another', () => {
    const begun = () => {
      const doc = emptyReplica();
      doc.clientID = 7;
      const sheet = doc.getMap('sheet');
      sheet.set('title.title', 'Saw arbor');
      return { doc, sheet };
    };
    const early = begun();
    const first = Y.encodeStateAsUpdate(early.doc);
    for (const title of ['Arbor', 'Arbor, saw', 'Saw arbor, bore']) early.sheet.set('title.title', title);
    // Overwritten one after the other: one item, of which the first is known already.
    const whole = Y.encodeStateAsUpdate(early.doc);
    expect(Y.decodeUpdate(whole).structs.map(({ length }) => length)).toEqual([3, 1]);
    const shadow = new Shadow(SHEET, 500_000);
    shadow.take(first);
    expect(shadow.take(whole)).not.toHaveProperty('fault');
    expect(shadow.doc.getMap('sheet').toJSON()).toEqual({ 'title.title': 'Saw arbor, bore' });
    shadow.end();
    // The same client tells that its first item was of another place.
    const other = new Shadow(SHEET, 500_000);
    const lies = emptyReplica();
    lies.clientID = 7;
    for (const part of ['a', 'b', 'c', 'd']) lies.getMap('sheet').set('title.part', part);
    other.take(first);
    expect(other.take(Y.encodeStateAsUpdate(lies))).toHaveProperty('fault');
    expect(other.doc.getMap('sheet').toJSON()).toEqual({ 'title.title': 'Saw arbor' });
    other.end();
  });

  const edits = walk(1500, 20_000);
  it(`${edits} edits of pages are all taken, whatever part of what they send is known already`, () => {
    const draw = new Draw(20261201);
    const shadow = new Shadow(SHEET, 500_000);
    const base = Y.encodeStateAsUpdate(honest());
    shadow.take(base);
    const pages = [0, 1, 2].map(() => {
      const doc = emptyReplica();
      Y.applyUpdate(doc, base);
      return { doc, seen: [Y.encodeStateVector(doc)] };
    });
    for (let i = 0; i < edits; i += 1) {
      const { doc, seen } = pages[draw.whole(0, 2)]!;
      doc.transact(() => {
        for (let n = draw.whole(1, 3); n > 0; n -= 1) {
          const cell = cellOf(doc, `c${draw.whole(0, 1)}`);
          const key = draw.next() < 0.5 ? 'entry' : 'label';
          if (draw.next() < 0.2) cell.delete(key);
          else cell.set(key, `${i}`);
        }
      });
      // Some of the edits before this one have come already, or have not and are not in it.
      if (draw.next() < 0.7) {
        const taken = shadow.take(Y.encodeStateAsUpdate(doc, seen[draw.whole(0, seen.length - 1)]!));
        expect(taken).not.toHaveProperty('fault');
      }
      if (draw.next() < 0.2) Y.applyUpdate(doc, shadow.state(Y.encodeStateVector(doc)));
      seen.push(Y.encodeStateVector(doc));
      if (seen.length > 4) seen.shift();
    }
    for (const { doc } of pages) {
      expect(shadow.take(Y.encodeStateAsUpdate(doc))).not.toHaveProperty('fault');
    }
    for (const { doc } of pages) {
      Y.applyUpdate(doc, shadow.state());
      expect(doc.toJSON()).toEqual(shadow.doc.toJSON());
    }
    shadow.end();
  });

  it('on the list is refused too', () => {
    const shadow = new Shadow(LIST_DOCUMENT, 500_000);
    const one = { title: 'Saw arbor', template: false, by: 'Desk', since: 1 };
    const put = (id: string, value: unknown) =>
      written(new Uint8Array([0, 0]), (doc) => doc.getMap('shared').set(id, value));
    for (const [id, value] of [
      ['a b', one],
      ['a', 'text'],
      ['a', { ...one, more: 1 }],
      ['a', { ...one, title: 'x'.repeat(501) }],
      ['a', { ...one, since: '1' }],
    ] as const)
      expect(shadow.take(put(id, value))).toHaveProperty('fault');
    expect(shadow.take(put('a', { ...one, ended: true }))).not.toHaveProperty('fault');
    expect(shadow.doc.toJSON()).toEqual({ shared: { a: { ...one, ended: true } }, equipment: {} });
    shadow.end();
  });

  it('in the place of a gauge on the list is refused, and more of them than a shop has', () => {
    const shadow = new Shadow(LIST_DOCUMENT, 500_000);
    const one = { kind: 'gauge', label: 'No. 4', inputs: { certificate: '1 um' }, by: 'Desk', since: 1 };
    const put = (write: (map: Y.Map<unknown>) => void, base = shadow.state()) =>
      written(base, (doc) => write(doc.getMap('equipment')));
    const before = JSON.stringify(shadow.doc.toJSON());
    for (const [id, value] of [
      ['a b', one],
      ['x'.repeat(65), one],
      ['a', 'text'],
      ['a', null],
      ['a', [one]],
      ['a', { ...one, proven: true }],
      ['a', { ...one, inputs: { certificate: '=bore' } }],
      ['a', { ...one, inputs: { certificate: '1'.repeat(501) } }],
      ['a', { ...one, inputs: { certificate: { text: '1 um' } } }],
      ['a', new Y.Map(Object.entries(one))],
      ['a', new Y.Text('x')],
    ] as const)
      expect(shadow.take(put((map) => map.set(id, value)))).toHaveProperty('fault');
    expect(shadow.take(written(shadow.state(), (doc) => doc.getMap('metals').set('a', one)))).toHaveProperty(
      'fault',
    );
    expect(
      shadow.take(written(shadow.state(), (doc) => doc.getArray('equipment').push([one]))),
    ).toHaveProperty('fault');
    expect(JSON.stringify(shadow.doc.toJSON())).toBe(before);

    const fill = (from: number, to: number) => (map: Y.Map<unknown>) => {
      for (let i = from; i < to; i += 1) map.set(`e${i}`, one);
    };
    expect(shadow.take(put(fill(0, 500)))).not.toHaveProperty('fault');
    const full = shadow.state();
    expect(shadow.take(put(fill(500, 501)))).toHaveProperty('fault');
    // One ended or taken away is taken all the same, and makes room.
    expect(shadow.take(put((map) => map.set('e0', { ...one, ended: true })))).not.toHaveProperty('fault');
    expect(shadow.take(put((map) => map.delete('e1')))).not.toHaveProperty('fault');
    expect(shadow.take(put(fill(500, 501)))).not.toHaveProperty('fault');
    // What another server has taken stands there: two that differ for good would be worse than one too many.
    expect(shadow.take(put(fill(600, 601), full), undefined, true)).not.toHaveProperty('fault');
    expect(shadow.doc.getMap('equipment').size).toBe(501);
    shadow.end();
  });

  const count = walk(1500, 100_000);
  it(`${count} bytes changed at random: refused with nothing changed, or a sheet all the same`, () => {
    const draw = new Draw(20261130);
    const base = Y.encodeStateAsUpdate(honest());
    const seeds = [
      base,
      ...CRAFTED.map(([, write]) => written(base, write)).filter((bytes) => bytes.length < 3000),
      written(base, (doc) => cellOf(doc).set('entry', '8 in')),
      written(base, (doc) => cellOf(doc, 'c2').delete('entry')),
    ];
    let shadow = new Shadow(SHEET, 500_000);
    shadow.take(base);
    let refused = 0;
    for (let i = 0; i < count; i += 1) {
      const bytes = new Uint8Array(seeds[draw.whole(0, seeds.length - 1)]!);
      for (let n = draw.whole(1, 4); n > 0; n -= 1)
        bytes[draw.whole(0, bytes.length - 1)] = draw.whole(0, 255);
      const cut = draw.next() < 0.2 ? bytes.slice(0, draw.whole(0, bytes.length)) : bytes;
      const before = JSON.stringify(shadow.doc.toJSON());
      const taken = shadow.take(cut);
      if ('fault' in taken) {
        refused += 1;
        expect(JSON.stringify(shadow.doc.toJSON())).toBe(before);
      } else if (taken.update) {
        const whole = emptyReplica();
        let fault: StoredFault | undefined;
        whole.on('afterTransaction', (transaction: Y.Transaction) => {
          fault ??= faultIn(whole, transaction);
        });
        Y.applyUpdate(whole, shadow.state());
        expect(fault).toBeUndefined();
        expect(whole.toJSON()).toEqual(shadow.doc.toJSON());
      }
      // Begun anew now and then, so that many are tried on a sheet that is as a page leaves it.
      if (i % 50 === 49) {
        shadow.end();
        shadow = new Shadow(SHEET, 500_000);
        shadow.take(base);
      }
    }
    shadow.end();
    expect(refused).toBeGreaterThan(count / 4);
  });
});

describe('over a socket', () => {
  let server: Served;
  const devices: Device[] = [];
  afterEach(async () => {
    for (const device of devices.splice(0)) device.close();
    await server.stop();
    dropFolder(server.folder);
  });

  it('the server lives through what is no message, and others notice nothing', async () => {
    server = await served({ limits: { refusals: 1e6, socketsWithoutKey: 1e6 } });
    const key = await server.key();
    const desk = new Device(server.port, key, SHEET);
    devices.push(desk);
    Y.applyUpdate(desk.doc, Y.encodeStateAsUpdate(honest()));
    const mark = desk.ask();
    await expect.poll(() => desk.stored?.mark).toBe(mark);
    const before = desk.cells().toJSON();
    const base = Y.encodeStateAsUpdate(desk.doc);
    const draw = new Draw(7);
    for (let i = 0; i < walk(60, 3000); i += 1) {
      const socket = new WebSocket(`ws://127.0.0.1:${server.port}${SYNC_PATH}`);
      await new Promise((done) => socket.on('open', done));
      socket.on('error', () => {});
      if (draw.next() < 0.9) socket.send(authFrame(SHEET, tokenOf(key)));
      for (let n = 0; n < 5; n += 1) {
        const [, write] = CRAFTED[draw.whole(0, CRAFTED.length - 1)]!;
        const frame = syncFrame(SHEET, 2, written(base, write));
        if (draw.next() < 0.5) frame[draw.whole(0, 20)] = draw.whole(0, 255);
        socket.send(draw.next() < 0.2 ? frame.subarray(0, draw.whole(0, frame.length)) : frame);
      }
      socket.close();
      await new Promise((done) => socket.on('close', done));
    }
    desk.write('c0', 'entry', '9 in');
    const last = desk.ask();
    await expect.poll(() => desk.stored?.mark).toBe(last);
    const cells = desk.cells().toJSON();
    expect(cells).toEqual({ ...before, c0: { ...before.c0, entry: '9 in' } });
    expect(desk.doc.getMap('sheet').toJSON()).toEqual({ 'title.title': 'Saw arbor' });
    const kept = new Y.Doc();
    for (const update of await server.store.load(SHEET)) Y.applyUpdate(kept, update);
    expect(kept.getMap('cells').toJSON()).toEqual(cells);
    expect([...kept.share.keys()].sort()).toEqual(['cells', 'sheet']);
  });
});
