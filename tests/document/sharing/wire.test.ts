import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import {
  covers,
  joinIn,
  joinLink,
  markIn,
  presenceIn,
  refusalIn,
  serverSays,
  sheetDocument,
  sheetOfDocument,
  tokenIn,
  tokenOf,
  vectorText,
} from '../../../src/document/sharing/wire.ts';

const KEY = 'AAAAAAAAAAAAAAAAAAAA-_';

describe('what page and server say to each other', () => {
  it('a join link gives back its key and sheet, and nothing else is one', () => {
    const link = joinLink('http://10.0.0.2:4870/', KEY, 'a-b_1');
    expect(link).toBe(`http://10.0.0.2:4870/#/join/${KEY}/a-b_1`);
    expect(joinIn(new URL(link).hash)).toEqual({ key: KEY, sheet: 'a-b_1' });
    expect(joinIn(new URL(joinLink('http://10.0.0.2:4870', KEY)).hash)).toEqual({ key: KEY });
    for (const hash of ['', '#/join/', `#/join/${KEY}x`, `#/join/${KEY}/`, `#/join/${KEY}/a b`, '#/open/x'])
      expect(joinIn(hash), hash).toBeUndefined();
  });

  it('a token is edition, key and the keys before', () => {
    expect(tokenIn(tokenOf(KEY))).toEqual({ edition: 2, key: KEY, former: [] });
    const before = KEY.replace('A', 'b');
    expect(tokenIn(tokenOf(KEY, [before]))).toEqual({ edition: 2, key: KEY, former: [before] });
    for (const token of ['', KEY, `1 ${KEY}x`, `x ${KEY}`, `1  ${KEY}`, `99999999 ${KEY}`])
      expect(tokenIn(token), token).toBeUndefined();
  });

  it('only names of documents hold a sheet', () => {
    expect(sheetOfDocument(sheetDocument('c0-1_x'))).toBe('c0-1_x');
    for (const name of ['list', 'sheet.', 'sheet.a.b', '__proto__', `sheet.${'a'.repeat(65)}`, 'sheet.a\n'])
      expect(sheetOfDocument(name), name).toBeUndefined();
  });

  it('of presence only its own fields are taken, none too long', () => {
    expect(presenceIn({ device: 'bench', line: 'c1', typing: 'entry', more: 1 })).toEqual({
      device: 'bench',
      line: 'c1',
      typing: 'entry',
    });
    expect(presenceIn({ device: 'bench', line: 7, typing: 'x'.repeat(201) })).toEqual({ device: 'bench' });
    for (const state of [null, 'x', {}, { device: 'x'.repeat(41) }, [1]])
      expect(presenceIn(state)).toBeUndefined();
  });

  it('stored covers a document when it has as much of every client', () => {
    const doc = new Y.Doc();
    doc.getMap('sheet').set('rule', 'simple');
    const stored = { type: 'stored', vector: vectorText(Y.encodeStateVector(doc)) } as const;
    expect(covers(stored, Y.encodeStateVector(doc))).toBe(true);
    doc.getMap('sheet').set('rule', 'worst-case');
    expect(covers(stored, Y.encodeStateVector(doc))).toBe(false);
    expect(covers({ type: 'stored', vector: '!' }, Y.encodeStateVector(doc))).toBe(false);
    expect(covers({ type: 'stored', vector: '_____' }, Y.encodeStateVector(doc))).toBe(false);
  });

  it('what is not of this protocol is nothing', () => {
    expect(markIn('{"mark":3}')).toBe(3);
    for (const payload of ['', '3', '{"mark":-1}', '{"mark":"3"}', '{"mark":1e300}', '[]'])
      expect(markIn(payload), payload).toBeUndefined();
    expect(serverSays('{"type":"storing","state":"full","x":1}')).toEqual({ type: 'storing', state: 'full' });
    expect(serverSays('{"type":"lost","n":1,"key":"entry","lost":"1 in"}')).toMatchObject({ key: 'entry' });
    expect(serverSays('{"type":"refused","cell":"c1","key":"note","why":"x"}')).toEqual({
      type: 'refused',
      cell: 'c1',
      key: 'note',
    });
    expect(serverSays(`{"type":"refused","key":"${'x'.repeat(301)}"}`)).toBeUndefined();
    for (const payload of ['', '{"type":"stored"}', '{"type":"lost","n":1}', '{"type":"later"}', 'null'])
      expect(serverSays(payload), payload).toBeUndefined();
    expect(refusalIn('key-ended')).toBe('key-ended');
    expect(refusalIn('provider_initiated')).toBeUndefined();
  });
});
