/** How unit texts are read: symbols joined by `.` and `/`, with whole powers, and no guess about what a stroke covers. */

/** One symbol of a compound with its power, positive above the stroke. */
export interface Factor {
  symbol: string;
  power: number;
}

export type Compound = { factors: Factor[] } | { fault: 'form' | 'stroke'; at: number };

const SUPERSCRIPTS: Readonly<Record<string, string>> = { '⁻': '-', '¹': '1', '²': '2', '³': '3', '⁴': '4' };

/** One spelling for what can be typed in several: `N·m` and `N * m` are `N.m`, `in²` and `in^2` are `in2`. */
export const normal = (text: string): string =>
  text
    .trim()
    .replaceAll('μ', 'µ')
    .replace(/[·⋅∙*×]/gu, '.')
    .replace(/[⁻¹²³⁴]/gu, (c) => SUPERSCRIPTS[c] ?? c)
    .replace(/\s*([./()^])\s*/gu, '$1')
    .replaceAll('^', '');

const FACTOR = /([A-Za-zµ°‰%Δ_]+)(-?\d)?/uy;

/** `text` in its normal spelling. A product after a stroke (`W/m.K`) is refused: it needs parentheses. */
export const readCompound = (text: string): Compound => {
  const factors: Factor[] = [];
  let at = 0;
  const one = (sign: number): boolean => {
    FACTOR.lastIndex = at;
    const match = FACTOR.exec(text);
    if (!match) return false;
    factors.push({ symbol: match[1] as string, power: sign * Number(match[2] ?? 1) });
    at = FACTOR.lastIndex;
    return true;
  };
  const group = (sign: number): boolean => {
    if (text[at] !== '(') return one(sign);
    do {
      at += 1;
      if (!one(sign)) return false;
    } while (text[at] === '.');
    if (text[at] !== ')') return false;
    at += 1;
    return true;
  };

  if (text.startsWith('1/')) at = 1;
  else if (!group(1)) return { fault: 'form', at };
  let below = false;
  while (at < text.length) {
    const operator = text[at];
    if (operator !== '/' && operator !== '.') return { fault: 'form', at };
    if (operator === '.' && below) return { fault: 'stroke', at };
    below ||= operator === '/';
    at += 1;
    if (!group(operator === '/' ? -1 : 1)) return { fault: 'form', at };
  }
  return { factors };
};

const POWERS: Readonly<Record<string, string>> = { '-': '⁻', '1': '¹', '2': '²', '3': '³', '4': '⁴' };

/** `N.m2` for people: `N·m²`, with the label of each symbol. */
export const compoundLabel = (text: string, labelOf: (symbol: string) => string): string =>
  text.replace(/([A-Za-zµ°‰%Δ_]+)(-?\d)?|\./gu, (all, symbol?: string, power?: string) =>
    symbol
      ? labelOf(symbol) + [...(power ?? '')].map((c) => POWERS[c] ?? c).join('')
      : all === '.'
        ? '·'
        : all,
  );
