import { CompletionContext, type CompletionResult } from '@codemirror/autocomplete';
import { EditorState } from '@codemirror/state';
import { expect, it } from 'vitest';
import { completeWith } from '../../src/page/entry/complete.ts';
import type { SheetWords } from '../../src/page/entry/sheet-words.ts';

let plan: string | undefined;
const words = {
  names: () => ['journal', 'jaw_gap', 'bore'].map((name) => ({ name, label: '' })),
  partsOf: async (name: string) =>
    name === 'bore'
      ? [
          { name: 'least', label: 'least' },
          { name: 'thread', label: 'thread' },
        ]
      : [],
  units: () => ['in', 'inHg', 'mm'],
  library: async () => [],
  plan: () => plan,
} as unknown as SheetWords;

const at = (text: string) => new CompletionContext(EditorState.create({ doc: text }), text.length, false);
const labels = (result: CompletionResult | null | undefined) => result?.options.map(({ label }) => label);
const typedOn = (shown: CompletionResult | null, text: string) =>
  shown!.update!(shown!, shown!.from, text.length, at(text));

it('behind a point stand figures and choices of that line', async () => {
  const shown = await completeWith(words)(at('=2*bore.'));
  expect(labels(shown)).toEqual(['least', 'thread']);
  expect(labels(typedOn(shown, '=2*bore.th'))).toEqual(['thread']);
});

it('offers follow what is typed on at once, and are asked for anew where another word begins', async () => {
  const shown = await completeWith(words)(at('=j'));
  expect(labels(shown)).toEqual(expect.arrayContaining(['journal', 'jaw_gap']));
  const next = typedOn(shown, '=jo');
  expect(labels(next)).toEqual(['journal']);
  expect(labels(typedOn(next, '=jou'))).toEqual(['journal']);
  // Wholly typed there is nothing to offer: Tab goes on.
  expect(typedOn(next, '=journal')).toBeNull();
  expect(typedOn(next, '=jo+b')).toBeNull();
  expect(typedOn(next, '=')).toBeNull();
});

it('offers a reading by its last digits, behind those it shares with the one before or the plan', async () => {
  const offered = async (text: string) => labels(await completeWith(words)(at(text)))?.[0];
  plan = undefined;
  expect(await offered('1.7481; 79')).toBe('1.7479');
  expect(await offered('1.7481;1.7480 | 8')).toBe('1.748');
  expect(await offered('44,912;07')).toBe('44,907');
  // Nothing before it to begin as, or a reading of its own: whole, with its mark, or as large as the one before.
  for (const text of [
    '79',
    '1 3/4; 79',
    '2; 79',
    '1.7481; 1.79',
    '49.912; 50',
    '1.7481 in ± 79',
    '=MAX(2;1.7481;79',
  ])
    expect(await offered(text), text).toBeUndefined();
  plan = '2.2612';
  expect(await offered('09')).toBe('2.2609');
  expect(await offered('2.2609;13')).toBe('2.2613');
  expect(await offered('2')).toBeUndefined();
  expect(await offered('2 1/4;13')).toBeUndefined();
});
