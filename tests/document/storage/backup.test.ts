import { deleteDB } from 'idb';
import { expect, it } from 'vitest';
import { DATABASE } from '../../../src/document/storage/database.ts';
import { bushJob } from '../sample.ts';
import { useShops } from './shops.ts';

const newShop = useShops();

it('a whole shop goes into one file and comes back, with revisions, settings, archive and times', async () => {
  const shop = await newShop();
  const one = await shop.create(bushJob());
  const two = await shop.create({ ...bushJob(), template: true, title: { title: 'Bush' } });
  await shop.archive(two);
  await shop.revise(one, 'as found');
  await shop.setSetting('length', 'mm');
  const steps: string[] = [];
  const { file, problems } = await shop.backup((done, total) => steps.push(`${done}/${total}`));
  expect(problems).toEqual([]);
  expect(steps).toEqual(['1/2', '2/2']);
  const rows = shop.list();
  const revisions = await shop.revisions(one);
  await shop.close();

  await deleteDB(DATABASE);
  const empty = await newShop();
  const restored = await empty.restore(file);
  expect(restored).toMatchObject({ same: [], copies: [], problems: [] });
  expect(empty.list().sort((a, b) => (a.id < b.id ? -1 : 1))).toEqual(
    rows.sort((a, b) => (a.id < b.id ? -1 : 1)),
  );
  expect(await empty.revisions(one)).toEqual(revisions);
  expect(await empty.file(two)).toMatchObject({ template: true, title: { title: 'Bush' } });
  expect(await empty.setting('length')).toBe('mm');
});

it('a backup overwrites nothing: what is the same is left, what differs comes in beside it', async () => {
  const shop = await newShop();
  const [one, two] = [await shop.create(bushJob()), await shop.create(bushJob())];
  const { file } = await shop.backup();
  await shop.setSetting('length', 'in');
  const sheet = await shop.open(two);
  if ('document' in sheet) sheet.document.setEntry('c3', '2.26 in');
  const restored = await shop.restore(await file.text());
  expect(restored).toMatchObject({ added: [], same: [one], problems: [] });
  const [copy] = (restored as { copies: string[] }).copies;
  expect(await shop.file(copy!)).toMatchObject({ cells: bushJob().cells });
  expect(await shop.file(two)).toMatchObject({ cells: { 2: { entry: '2.26 in' } } });
});

it('a file that is no backup, is cut short or holds a foreign sheet is answered in words', async () => {
  const shop = await newShop();
  const id = await shop.create(bushJob());
  const { file } = await shop.backup();
  const text = await file.text();
  expect(await shop.restore(text.slice(0, 200))).toMatchObject({
    message: expect.stringContaining('cut short'),
  });
  expect(await shop.restore('{"format":"x"}')).toMatchObject({
    message: expect.stringContaining('not a backup'),
  });
  expect(await shop.restore(text.replace('"version":1', '"version":7'))).toMatchObject({
    message: expect.stringContaining('version 7'),
  });
  await shop.discard(id);
  const broken = text.replace('"fitwright-sheet"', '"something-else"');
  expect(await shop.restore(broken)).toMatchObject({ added: [], problems: [{ kind: 'syntax' }] });
});

it('goes on past whatever stands among the sheets, names it, and keeps nothing that a page would stumble over', async () => {
  const shop = await newShop();
  const file = { ...bushJob(), title: { title: 'Pump shaft' } };
  const hostile = { toString: 1 };
  const revisions = [
    { time: 1e300, label: hostile, fingerprint: `2:${'0'.repeat(64)}`, text: JSON.stringify(file) },
    { time: 5, label: 'as found', fingerprint: await shop.printer.print(file), text: JSON.stringify(file) },
    { text: hostile },
    null,
  ];
  const sheets = [
    null,
    7,
    { id: 'a', file: { ...file, title: { title: hostile } } },
    { id: 'b', file: 'a text' },
    { id: '../b', file, created: 1e300, changed: -1e300, removed: '1', archived: hostile, revisions },
    { id: hostile, file },
    { id: 'c', file: { ...file, cells: [{ id: 'x', role: 'heard' }] } },
    { id: '__proto__', file },
  ];
  const saved = { format: 'fitwright-shop', version: 1, made: hostile, settings: [], sheets };
  const restored = await shop.restore(JSON.stringify(saved));
  expect(restored).toMatchObject({ same: [], copies: [] });
  const { added, problems } = restored as { added: string[]; problems: { message: string }[] };
  expect(problems).toHaveLength(6);
  expect(added).toHaveLength(2);
  expect(added).toContain('__proto__');
  expect(added).not.toContain('../b');
  for (const { created, changed, removed } of shop.list()) {
    expect(removed).toBeUndefined();
    for (const time of [created, changed]) expect(new Date(time).getTime()).toBe(time);
  }
  const kept = await shop.revisions(added.find((id) => id !== '__proto__')!);
  expect(kept).toMatchObject([
    { time: 0, label: '', fingerprint: '' },
    { time: 5, label: 'as found', fingerprint: revisions[1]!.fingerprint },
  ]);
  expect(await shop.restore(JSON.stringify({ ...saved, version: hostile }))).toMatchObject({
    message: expect.stringContaining('reads version 1'),
  });
});
