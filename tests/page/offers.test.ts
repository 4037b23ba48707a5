import { CompletionContext, type CompletionResult } from '@codemirror/autocomplete';
import { EditorState } from '@codemirror/state';
import { expect, it } from 'vitest';
import { completeWith } from '../../src/page/entry/complete.ts';
import type { SheetWords } from '../../src/page/entry/sheet-words.ts';

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
