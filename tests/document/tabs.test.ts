import { afterEach, describe, expect, it, vi } from 'vitest';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { joinTabs, type Tabs } from '../../src/document/tabs.ts';
import { bushJob } from './sample.ts';
import { until } from './storage/shops.ts';

vi.setConfig({ testTimeout: 30_000 });

const tabs: Tabs[] = [];
afterEach(() => {
  for (const tab of tabs.splice(0)) tab.close();
});

/** A tab that stores at once, as far as the others can tell. */
function open(sheet: SheetDocument, kept: Uint8Array[] = []) {
  const tab = joinTabs(sheet, (update) => kept.push(update));
  sheet.onUpdate((update, origin) => {
    if (origin === 'local' || origin === 'undo') tab.send(update);
  });
  tabs.push(tab);
  return tab;
}

describe('tabs with one sheet', () => {
  it('follow each other live, undo included', async () => {
    const here = SheetDocument.fromFile(bushJob(), { id: 'tabs-live' });
    const there = new SheetDocument('tabs-live');
    there.applyUpdate(here.updateSince(), 'load');
    open(here);
    open(there);
    here.setEntry('c3', '2.26 in');
    await until(() => there.cell('c3')!.entry === '2.26 in');
    there.renameCell('c3', 'hole');
    await until(() => here.cell('c6')!.entry === '=hole - press.close_in');
    here.undo();
    await until(() => there.cell('c3')!.entry === '2.2512; 2.2514 in');
    expect(here.toFile()).toEqual(there.toFile());
  });

  it('bring each other up to date when one joins, and both keep what the other had not stored', async () => {
    const here = SheetDocument.fromFile(bushJob(), { id: 'tabs-join' });
    const there = new SheetDocument('tabs-join');
    there.applyUpdate(here.updateSince(), 'load');
    here.setEntry('c3', '2.26 in');
    there.setField('c3', 'note', 'oval');
    const [keptHere, keptThere] = [[], []] as [Uint8Array[], Uint8Array[]];
    open(here, keptHere);
    open(there, keptThere);
    await until(() => keptHere.length === 1 && keptThere.length === 1);
    expect(here.cell('c3')).toMatchObject({ entry: '2.26 in', note: 'oval' });
    expect(here.toFile()).toEqual(there.toFile());
  });

  it('are not disturbed by messages that are no updates', async () => {
    const here = SheetDocument.fromFile(bushJob(), { id: 'tabs-odd' });
    open(here);
    const stranger = new BroadcastChannel('fitwright-sheet-tabs-odd');
    stranger.postMessage({ type: 'stored', update: new Uint8Array([9, 9, 9, 255]) });
    const heard = new Promise((resolve) => {
      stranger.onmessage = resolve;
    });
    stranger.postMessage({ type: 'hello', from: 'x', state: new SheetDocument().stateVector() });
    await heard;
    stranger.close();
    expect(here.toFile()).toEqual(bushJob());
  });
});
