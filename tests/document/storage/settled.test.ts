import { expect, it } from 'vitest';
import { Saver } from '../../../src/document/storage/saver.ts';
import { SAVED } from '../../../src/document/storage/state.ts';
import { onceStored } from '../../../src/page/state/once-stored.ts';

/** A store that answers when the test says so. */
const slowStore = () => {
  const open: Array<{ keep(): void; fail(): void }> = [];
  const store = () =>
    new Promise<void>((resolve, reject) => {
      open.push({ keep: resolve, fail: () => reject(new Error('no answer')) });
    });
  return { saver: new Saver(store, SAVED, undefined, { slow: 60_000, retry: 60_000 }), open };
};

const turn = () => new Promise((go) => setTimeout(go, 0));
const update = new Uint8Array([0, 0]);

it('what an edit led to comes behind its store, in order, and waits for no later edit', async () => {
  const { saver, open } = slowStore();
  const done: string[] = [];
  const run = onceStored(() => saver.settled());
  run(() => done.push('at rest'));
  expect(done).toEqual(['at rest']);
  saver.add(update);
  run(() => done.push('first'));
  saver.add(update);
  run(() => done.push('second'));
  await turn();
  expect(done).toEqual(['at rest']);
  open[0]!.keep();
  await turn();
  expect(done).toEqual(['at rest', 'first']);
  open[1]!.keep();
  await turn();
  expect(done).toEqual(['at rest', 'first', 'second']);
  expect(saver.settled()).toBeUndefined();
});

it('a store that fails holds nothing back, then and until something is stored again', async () => {
  const { saver, open } = slowStore();
  const done: string[] = [];
  const run = onceStored(() => saver.settled());
  saver.add(update);
  run(() => done.push('first'));
  open[0]!.fail();
  await turn();
  expect(done).toEqual(['first']);
  saver.add(update);
  run(() => done.push('second'));
  expect(done).toEqual(['first', 'second']);
  saver.close();
});
