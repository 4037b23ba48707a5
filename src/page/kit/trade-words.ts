import type { Preferences } from './choices.ts';

/** Words of one meaning, British and American; each form beside its own. */
const PAIRS: Record<'bush' | 'play', ReadonlyArray<readonly [first: string, second: string]>> = {
  bush: [
    ['bushes', 'bushings'],
    ['bush', 'bushing'],
  ],
  play: [['end float', 'end play']],
};

const capitalLike = (model: string, word: string): string =>
  /^\p{Lu}/u.test(model) ? word[0]!.toUpperCase() + word.slice(1) : word;

const replacer = (from: string, to: string) => {
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}_.])${from.replace(' ', '\\s')}(?![\\p{L}\\p{N}_])`, 'giu');
  return (text: string) => text.replace(pattern, (found) => capitalLike(found, to));
};

const REPLACERS = new Map(
  Object.values(PAIRS).flatMap((pairs) =>
    pairs.flatMap(([first, second]) => [
      [`${first}>`, replacer(first, second)] as const,
      [`${second}>`, replacer(second, first)] as const,
    ]),
  ),
);

/** A text for people in the user's own trade words. For display alone: names and stored text keep theirs. */
export const inTradeWords = (text: string, wanted: Pick<Preferences, 'bush' | 'play'>): string => {
  let out = text;
  for (const key of ['bush', 'play'] as const) {
    const wish = wanted[key];
    if (wish === 'as written') continue;
    const second = PAIRS[key].at(-1)![1] === wish;
    for (const pair of PAIRS[key]) out = REPLACERS.get(`${pair[second ? 0 : 1]}>`)!(out);
  }
  return out;
};
