import { idIn } from '../syntax/ids.ts';
import type { Reference } from '../syntax/syntax.ts';
import { escapeMarkup } from './markup.ts';

const GREEK: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'μ',
  nu: 'ν',
  xi: 'ξ',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  chi: 'χ',
  psi: 'ψ',
  omega: 'ω',
  Gamma: 'Γ',
  Delta: 'Δ',
  Theta: 'Θ',
  Lambda: 'Λ',
  Sigma: 'Σ',
  Phi: 'Φ',
  Psi: 'Ψ',
  Omega: 'Ω',
};

/** Names that stand for a Greek letter. */
export const GREEK_NAMES: ReadonlySet<string> = new Set(Object.keys(GREEK));

/** A single letter slants, as a symbol does; a word stands upright. */
const identifier = (text: string): string => {
  const shown = GREEK[text] ?? text;
  return [...shown].length === 1
    ? `<mi>${escapeMarkup(shown)}</mi>`
    : `<mi mathvariant="normal">${escapeMarkup(shown)}</mi>`;
};

/**
 * A name as a symbol: `alpha_b` is α with the index b, `bush_od` is bush with the index od; what lies between first and
 * last part stays together. An output stands behind its cell, with a point.
 */
export const symbolOf = (ref: Pick<Reference, 'name' | 'output'>): string => {
  const own = symbol(idIn(ref.name) ?? ref.name);
  return ref.output === undefined ? own : `<mrow>${own}<mo>.</mo>${symbol(ref.output)}</mrow>`;
};

const symbol = (name: string): string => {
  const parts = name.split('_').filter((part) => part !== '');
  const [base, ...index] = parts;
  if (base === undefined) return identifier(name);
  const word = index.map((part) => GREEK[part] ?? part).join(' ');
  return index.length === 0
    ? identifier(base)
    : `<msub>${identifier(base)}<mtext>${escapeMarkup(word)}</mtext></msub>`;
};
