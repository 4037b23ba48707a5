import type { Draw } from './draw.ts';
import type { Scene } from './scenes.ts';

/** What one number becomes; undefined where the slip cannot be made with it. */
type Change = (text: string, scene: Scene, draw: Draw) => string | undefined;

const digitsIn = (text: string): number[] => [...text].flatMap((c, i) => (/\d/.test(c) ? [i] : []));
const putAt = (text: string, at: number, put: string, over = 1): string =>
  text.slice(0, at) + put + text.slice(at + over);
const moved =
  (by: (scene: Scene, draw: Draw) => number): Change =>
  (text, scene, draw) => {
    const value = Number(text) + draw.of([1, -1]) * by(scene, draw);
    return value > 0 ? scene.pen.number(value) : undefined;
  };

/** Slips of one number or of all of a line, told by what they do to it as written. */
export const NUMBER_SLIPS: Readonly<Record<string, Change>> = {
  sign: (text) => `-${text}`,
  frame: moved(({ pen }) => (pen.inch ? 1 : 25)),
  radius: (text, { pen }) => pen.number(Number(text) / 2),
  'doubled radius': (text, { pen }) => pen.number(Number(text) * 2),
  'point one place out': (text, _, draw) => {
    const value = Number(text) * draw.of([10, 0.1]);
    return String(Number(value.toPrecision(8)));
  },
  'point lost': (text) => {
    const lost = text.replace('.', '').replace(/^0+(?=\d)/, '');
    return text.includes('.') ? lost : undefined;
  },
  'mm for inch': (text, { pen }) =>
    pen.inch ? (Number(text) * 25.4).toFixed(2 + (pen.places > 3 ? 1 : 0)) : (Number(text) / 25.4).toFixed(4),
  'one turn': moved(({ pen }) => (pen.inch ? 0.025 : 0.5)),
  'two turns': moved(({ pen }) => (pen.inch ? 0.05 : 1)),
  'wrong tenth': moved(() => 0.1),
  'swapped digits': (text, _, draw) => {
    const at = digitsIn(text);
    const first = draw.whole(0, at.length - 2);
    const [a, b] = [at[first], at[first + 1]] as [number, number];
    if (at.length < 2 || text[a] === text[b]) return undefined;
    const digits = [...text];
    [digits[a], digits[b]] = [digits[b] as string, digits[a] as string];
    return digits.join('');
  },
  'missing digit': (text, _, draw) => {
    const at = digitsIn(text);
    if (at.length < 2) return undefined;
    const left = putAt(text, draw.of(at), '');
    return left.endsWith('.') ? undefined : left;
  },
  'doubled digit': (text, _, draw) => {
    const at = draw.of(digitsIn(text));
    return putAt(text, at, `${text[at]}${text[at]}`);
  },
  'wrong digit': (text, _, draw) => {
    const at = draw.of(digitsIn(text));
    const put = String(draw.whole(0, 9));
    return put === text[at] ? undefined : putAt(text, at, put);
  },
};

export interface Made {
  text: string;
  /** Greatest move of a reading, in the unit. */
  moved: number;
  whole: boolean;
}

/** A slip made in one reading of a line, or, where something else than its list is known of it, in all of them. */
export function makeSlip(kind: string, scene: Scene, draw: Draw): Made | undefined {
  const { stations, pen, situation } = scene;
  if (kind === 'copied list') return { text: scene.other, moved: Number.POSITIVE_INFINITY, whole: true };
  const change = NUMBER_SLIPS[kind] as Change;
  const all = stations.flat();
  // Digits slip one at a time; a wrong frame, unit or point may be of all the readings.
  const isOfKeys = /digit|point lost/.test(kind);
  const whole = all.length === 1 || (situation !== 'list' && !isOfKeys && draw.chance(0.5));
  const at = whole ? -1 : draw.whole(0, all.length - 1);
  // The same change to all of them.
  const state = draw.whole(0, 2 ** 31);
  let n = 0;
  let most = 0;
  let isMade = true;
  const wrong = stations.map((station) =>
    station.map((text) => {
      if (!whole && n++ !== at) return text;
      const put = change(text, scene, whole ? draw.like(state) : draw);
      if (put === undefined || put === text) isMade = false;
      most = Math.max(most, Math.abs(Number(put) - Number(text)));
      return put ?? text;
    }),
  );
  return isMade ? { text: pen.write(wrong), moved: most, whole } : undefined;
}
