import { describe, expect, it } from 'vitest';
import type { Overwritten } from '../../src/document/model/overwritten.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { bushJob } from './sample.ts';

const TABS = 3;
const EDITS = 1000;

/** Seeded: Lehmer's generator. */
const numbers = (seed: number) => {
  let state = seed;
  return (below: number) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
};

/** Tabs of one sheet whose updates travel when they are told to, each pair in order. */
const tabs = () => {
  const first = SheetDocument.fromFile(bushJob());
  const all = Array.from({ length: TABS }, (_, k) => {
    if (k === 0) return first;
    const tab = new SheetDocument(first.id);
    tab.applyUpdate(first.updateSince(), 'load');
    return tab;
  });
  const told = all.map(() => new Set<unknown>());
  const queues = all.map(() => all.map(() => [] as Uint8Array[]));
  all.forEach((tab, from) => {
    tab.onUpdate((update, origin) => {
      if (origin === 'local')
        for (const [to, queue] of queues[from]!.entries()) if (to !== from) queue.push(update);
    });
    tab.observeOverwritten((found: readonly Overwritten[]) => {
      for (const { mine, cell, key } of found) told[from]!.add(tab.shown(mine, cell, key));
    });
  });
  const deliver = (from: number, to: number) => {
    const update = queues[from]![to]!.shift();
    if (update) all[to]!.applyUpdate(update, 'remote');
    return update !== undefined;
  };
  return { all, told, deliver };
};

describe('what another tab overwrote without knowing of it', () => {
  it.each([1, 2, 3])(`is told, each of ${EDITS} entries of one line in ${TABS} tabs (seed %i)`, (seed) => {
    const { all, told, deliver } = tabs();
    const upTo = numbers(seed);
    /** The last entry of each tab, and what its author knew when making it. */
    const last: Array<string | undefined> = all.map(() => undefined);
    const seen = all.map(() => new Set<string>());
    const knew = new Map<string, Set<string>>();
    const note = (tab: number) => {
      const now = all[tab]!.cell('c3')!.entry!;
      seen[tab]!.add(now);
    };
    for (let n = 0; n < EDITS; n += 1) {
      const tab = upTo(TABS);
      const text = `${n + 1} mm`;
      knew.set(text, new Set(seen[tab]!));
      all[tab]!.setEntry('c3', text);
      seen[tab]!.add(text);
      last[tab] = text;
      for (let k = upTo(4); k > 0; k -= 1) {
        const [from, to] = [upTo(TABS), upTo(TABS)];
        if (from !== to && deliver(from, to)) note(to);
      }
    }
    for (let moved = true; moved; ) {
      moved = false;
      for (let from = 0; from < TABS; from += 1)
        for (let to = 0; to < TABS; to += 1) if (from !== to && deliver(from, to)) moved = true;
    }
    const final = all[0]!.cell('c3')!.entry!;
    for (const tab of all) expect(tab.cell('c3')!.entry).toBe(final);
    // An entry stands, or was overwritten by somebody who had seen it, or its author was told.
    const all_told = new Set(told.flatMap((some) => [...some]));
    for (const [tab, entry] of last.entries()) {
      if (!entry || entry === final || told[tab]!.has(entry)) continue;
      const overwriter = [...knew].some(
        ([text, known]) => known.has(entry) && (text === final || all_told.has(text)),
      );
      expect(overwriter, `${entry} of tab ${tab} went without a word; ${final} stands`).toBe(true);
    }
    expect(all_told.size).toBeGreaterThan(50);
  });

  it('can be entered again, with names as they are now', () => {
    const { all, told, deliver } = tabs();
    const found: Overwritten[] = [];
    for (const tab of all) tab.observeOverwritten((some) => found.push(...some));
    all[0]!.setEntry('c4', '=bore + 1 thou');
    all[1]!.setEntry('c4', '=bore + 2 thou');
    for (const [from, to] of [
      [0, 1],
      [1, 0],
    ] as const)
      while (deliver(from, to));
    expect(found).toHaveLength(1);
    const loser = told.findIndex((some) => some.size > 0);
    expect(all[loser]!.shown(found[0]!.mine)).toBe(`=bore + ${loser + 1} thou`);
    all[loser]!.renameCell(all[loser]!.idOf('bore')!, 'bore_as_found');
    all[loser]!.enterAgain(found[0]!);
    expect(all[loser]!.cell('c4')!.entry).toBe(`=bore_as_found + ${loser + 1} thou`);
    expect(all[loser]!.undo()).toContain('entry of');
  });

  it('is not what was overwritten by somebody who had read it, nor what both wrote alike', () => {
    const { all, told, deliver } = tabs();
    all[0]!.setEntry('c3', '2.26 in');
    deliver(0, 1);
    all[1]!.setEntry('c3', '2.27 in');
    deliver(1, 0);
    expect(all[0]!.cell('c3')!.entry).toBe('2.27 in');
    all[0]!.setField('c3', 'note', 'polished');
    all[1]!.setField('c3', 'note', 'polished');
    for (const [from, to] of [
      [0, 1],
      [1, 0],
    ] as const)
      while (deliver(from, to));
    all[0]!.setTitle('title', 'One');
    all[1]!.setTitle('title', 'Two');
    expect(told.map((some) => some.size)).toEqual([0, 0, 0]);
    for (const [from, to] of [
      [0, 1],
      [1, 0],
    ] as const)
      while (deliver(from, to));
    expect(told[0]!.size + told[1]!.size).toBe(1);
  });
});
