import { expect, test } from 'vitest';
import { preferencesOf } from '../../src/page/kit/choices.ts';
import { outsideQuotes } from '../../src/page/kit/say-message.ts';
import { inTradeWords } from '../../src/page/kit/trade-words.ts';

const written = { bush: 'as written', play: 'as written' } as const;

test('labels change to the word preferred, with their capitals, and back', () => {
  const american = { bush: 'bushing', play: 'end play' } as const;
  const british = { bush: 'bush', play: 'end float' } as const;
  expect(inTradeWords('Bush outside diameter; two bushes; end float', american)).toBe(
    'Bushing outside diameter; two bushings; end play',
  );
  expect(inTradeWords('Bushing outside diameter; two bushings; End play', british)).toBe(
    'Bush outside diameter; two bushes; End float',
  );
  expect(inTradeWords('Bushings', american)).toBe('Bushings');
  expect(inTradeWords('Bush, end float', written)).toBe('Bush, end float');
});

test('names and parts of other words stay as they are', () => {
  const american = { bush: 'bushing', play: 'end play' } as const;
  expect(inTradeWords('bush_outside, fit.bush, ambush, bend floating', american)).toBe(
    'bush_outside, fit.bush, ambush, bend floating',
  );
});

test('what was kept and is not offered falls back, and nothing kept is the usual', () => {
  const usual = {
    length: 'sheet',
    decimal: '.',
    bush: 'as written',
    play: 'as written',
    look: 'system',
    text: 'usual',
  };
  expect(preferencesOf(undefined)).toEqual(usual);
  expect(preferencesOf({ decimal: ',', look: 'mauve', text: 3 })).toEqual({ ...usual, decimal: ',' });
});

test('a message is said in the preferred words, and names and entries in it stay', () => {
  const american = { bush: 'bushing', play: 'end play' } as const;
  const said = (message: string) => outsideQuotes(message, (text) => inTradeWords(text, american));
  expect(said('Waits for `bush`: the bush is blank. "bush 2" cannot be read: =bush + 1.')).toBe(
    'Waits for `bush`: the bushing is blank. "bush 2" cannot be read: =bush + 1.',
  );
});
