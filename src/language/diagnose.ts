import type { SyntaxNode, Tree } from '@lezer/common';
import { firstError, isFormula, parserFor } from './grammar/tree.ts';
import type { Span } from './syntax/syntax.ts';
import { short } from './syntax/wording.ts';
import { complain, type Reading, remedy, replaced } from './values/reading.ts';
import { signedZero, spellingsOf } from './values/spellings.ts';

/** Where reading stopped: the piece that does not fit, or the last character where the text ended too early. */
const place = (r: Reading, error: SyntaxNode | undefined): Span => {
  const end = r.text.trimEnd().length;
  const from = Math.min(error?.from ?? end, end);
  const to = Math.min(Math.max(error?.to ?? end, from), end);
  return to > from
    ? { from, to }
    : { from: Math.max(0, Math.min(from, end - 1)), to: Math.min(from + 1, end) };
};

const openParentheses = (text: string): number => {
  let depth = 0;
  for (const c of text.replace(/"[^"]*"/g, '')) depth += c === '(' ? 1 : c === ')' ? -1 : 0;
  return depth;
};

const OPERATOR_END = /[-+*/^×−;(<>=]\s*$/;

/** Says why a formula cannot be read, with a remedy where there is one. */
export const diagnoseFormula = (r: Reading, tree: Tree): void => {
  const error = firstError(tree);
  const span = place(r, error);
  const near = short(r.text.slice(span.from, span.to));
  const open = openParentheses(r.text);
  const body = r.text.trim();
  if (body === '=') return void complain(r, 'syntax', 'A formula is missing after "=".', span);
  if (OPERATOR_END.test(body)) {
    return void complain(
      r,
      'syntax',
      `The formula stops after "${body.at(-1)}": something is missing there.`,
      span,
    );
  }
  if (open > 0) {
    const entry = `${r.text.trimEnd()}${')'.repeat(open)}`;
    const fixed = !firstError(parserFor('Formula', r.context.decimal).parse(entry));
    const message = `${open === 1 ? 'A closing parenthesis is' : `${open} closing parentheses are`} missing.`;
    return void complain(r, 'syntax', message, span, fixed ? [remedy(entry)] : undefined);
  }
  if (open < 0)
    return void complain(r, 'syntax', 'There is a closing parenthesis without an opening one.', span);
  if (/"[^"]*$/.test(body.replace(/"[^"]*"/g, ''))) {
    return void complain(r, 'syntax', 'A text in quotes is not closed.', span);
  }
  const mixed = /(\d+)\s+(\d+\/\d+)/.exec(r.text);
  if (mixed && mixed.index <= span.to && span.from <= mixed.index + mixed[0].length) {
    return void complain(
      r,
      'syntax',
      `"${mixed[0]}" needs its unit in a formula, as in ${mixed[0]} in; as a plain number write (${mixed[1]} + ${mixed[2]}).`,
      { from: mixed.index, to: mixed.index + mixed[0].length },
      [
        remedy(
          replaced(
            r,
            { from: mixed.index, to: mixed.index + mixed[0].length },
            `(${mixed[1]} + ${mixed[2]})`,
          ),
        ),
      ],
    );
  }
  if (/^[A-Za-z]{1,2}\d{1,2}/.test(near) && error?.parent?.name === 'Quantity') {
    return void complain(
      r,
      'syntax',
      `"${near}" cannot stand behind a quantity in a formula: a class such as H7 belongs in the tolerance.`,
      span,
    );
  }
  complain(
    r,
    'syntax',
    `The formula cannot be read at "${near}": an operator (+ - * / ^) or ";" is missing before it, or it does not belong there.`,
    span,
  );
};

const NUMBER = String.raw`\d*[.,]?\d+`;
const UNIT = String.raw`\s*(?:[A-Za-zµ°"'_]+)?`;
/** 2.2510-2.2515 in: two sizes with a hyphen between them. */
const LIMITS = new RegExp(String.raw`^\s*(${NUMBER})(${UNIT})\s*[-−–]\s*(${NUMBER})(${UNIT})\s*$`);
/** 2.25 in + 0.004 in: one half of a tolerance, or arithmetic. */
const HALF = new RegExp(String.raw`^(.*?\S)\s*([-+−])\s*(${NUMBER}${UNIT})\s*$`);

/** Two sizes as limits, the lower first; 1.7500 -.0005 has no size behind the hyphen. */
const rangeOf = (
  r: Reading,
  [, a = '', unitA = '', b = '', unitB = '']: RegExpExecArray,
): string | undefined => {
  const [first, second] = [a, b].map((text) => Number(text.replace(',', '.'))) as [number, number];
  const range = `${a}${unitA.trimEnd()}..${b}${unitB}`;
  return first < second && isReadable(r, range) ? range : undefined;
};

/** A class of ISO 286 with no size before it. */
const CLASS_ALONE = /^([A-Za-z]{1,2}\d{1,2})$/;

const asFormula = (r: Reading): string | undefined => {
  const entry = `=${r.text.trim()}`;
  return firstError(parserFor('Formula', r.context.decimal).parse(entry)) ? undefined : entry;
};

/** 1.7483 +.0002 where a reading is wanted. */
const askDoubt = (r: Reading, doubt: string, formula: string, whole: Span): void => {
  const choices = [...(isReadable(r, doubt) ? [doubt] : []), formula].map(remedy);
  complain(
    r,
    'ask',
    `${short(r.text.trim())}: is this the doubt of the reading, ±, or a calculation? A calculation begins with "=".`,
    whole,
    choices,
  );
};

/** Says why an entry that is no formula cannot be read. Arithmetic without "=" is offered, never done in silence. */
export const diagnoseLiteral = (r: Reading, tree: Tree): void => {
  const text = r.text.trim();
  const whole = { from: r.text.indexOf(text[0] ?? ''), to: r.text.trimEnd().length };
  const limits = LIMITS.exec(text);
  const formula = asFormula(r);
  const spellings = spellingsOf(text, r.context.role).filter((one) => isReadable(r, one));
  const range = limits ? rangeOf(r, limits) : undefined;
  if (spellings.length > 0) {
    const meant = [...spellings, ...(range ? [range] : [])];
    const choices = [...meant, ...(formula ? [formula] : [])].map(remedy);
    return void complain(r, 'ask', `${short(text)}: is ${meant.join(' or ')} meant?`, whole, choices);
  }
  if (limits && range) {
    const choices = [range, ...(formula ? [formula] : [])].map(remedy);
    return void complain(
      r,
      'ask',
      `${short(text)}: are these limits of size, or is one to be taken from the other?`,
      whole,
      choices,
    );
  }
  const half = HALF.exec(text);
  if (half && formula) {
    const [, size, sign, amount = ''] = half;
    if (r.context.role === 'measured') return void askDoubt(r, `${size} ± ${amount}`, formula, whole);
    const zero = sign === '+' ? '-0' : '+0';
    const spread = sign === '+' ? `${size} +${amount} ${zero}` : `${size} ${zero} -${amount}`;
    const choices = [...(isReadable(r, spread) ? [remedy(spread)] : []), remedy(formula)];
    return void complain(
      r,
      'ask',
      `${short(text)}: is this a tolerance on one side, or a calculation? A calculation begins with "=".`,
      whole,
      choices,
    );
  }
  if (CLASS_ALONE.test(text) && 'low' in r.context.handbook.classLimits(0.01, text)) {
    return void complain(
      r,
      'syntax',
      `${text} is a class without a size: write the size before it (50 mm ${text}), put it into the tolerance, or ask for a cell of that name with =${text}.`,
      whole,
      formula ? [remedy(formula)] : undefined,
    );
  }
  const squared = /\^([234])\s*$/.exec(text);
  if (squared && isReadable(r, text.replace(/\^([234])\s*$/, '$1'))) {
    const entry = text.replace(/\^([234])\s*$/, '$1');
    return void complain(r, 'syntax', `Write the power behind the unit without "^": ${entry}.`, whole, [
      remedy(entry),
    ]);
  }
  if (formula) {
    return void complain(r, 'syntax', `A calculation or a name begins with "=": ${short(formula)}.`, whole, [
      remedy(formula),
    ]);
  }
  const span = place(r, firstError(tree));
  const near = short(r.text.slice(span.from, span.to));
  if (/^set\b/i.test(text)) {
    return void complain(
      r,
      'syntax',
      `"${short(text)}" cannot be read: a gauge read from its setting is written with the size it was set to, the divisions read and what one is worth, as in set 1.7500, +14 divisions of .0001.`,
      span,
    );
  }
  complain(
    r,
    'syntax',
    `"${short(text)}" cannot be read as a value: it stops at "${near}". A value is a number and a unit (2.2515 in, 1 1/2 thou, 38 mm); a calculation begins with "=".`,
    span,
  );
};

const isReadable = (r: Reading, text: string): boolean =>
  !isFormula(text) && !firstError(parserFor('Literal', r.context.decimal).parse(text));

const ONE_SIDE = new RegExp(String.raw`^([-+−])\s*${NUMBER}${UNIT}$`);
const NO_SIGN = new RegExp(`^${NUMBER}${UNIT}$`);

/** Says why a tolerance cannot be read; half of one is offered with the other half. */
export const diagnoseTolerance = (r: Reading): void => {
  const text = r.text.trim();
  const whole = { from: r.text.indexOf(text[0] ?? ''), to: r.text.trimEnd().length };
  const sign = ONE_SIDE.exec(text)?.[1];
  const entries =
    sign === '+'
      ? [`${text} -0`, `±${text.slice(1)}`]
      : sign
        ? [`+0 ${text}`, `±${text.slice(1)}`]
        : [`± ${text}`];
  const zero = signedZero(text);
  if (zero && !firstError(parserFor('Cut', r.context.decimal).parse(zero)))
    return void complain(r, 'ask', `${short(text)}: is ${zero} meant?`, whole, [remedy(zero)]);
  const choices = sign || NO_SIGN.test(text) ? entries.map(remedy) : undefined;
  const hint = choices ? ` Is ${entries.join(' or ')} meant?` : '';
  complain(
    r,
    choices ? 'ask' : 'syntax',
    `"${short(text)}" is not a tolerance: write +0.0005 -0 in, ± 0.02 mm, or a class such as H7.${hint}`,
    whole,
    choices,
  );
};
