export type PadKey =
  | '0'
  | '1'
  | '2'
  | '3'
  | '4'
  | '5'
  | '6'
  | '7'
  | '8'
  | '9'
  | '.'
  | '/'
  | ' '
  | '-'
  | 'back';

/**
 * A text without the digits that were offered at its beginning, where what was keyed in behind them is a reading of its
 * own: it has a decimal mark, or it goes on as a fraction.
 */
export const withoutOffer = (text: string, offered: string): string => {
  if (offered === '' || !text.startsWith(offered)) return text;
  const keyed = text.slice(offered.length);
  // A blank alone may stand behind a reading that began as the offer does.
  return /[./]/.test(keyed) ? keyed : text;
};

/** Figures behind the decimal mark. */
export const decimalsOf = (text: string): number => /[.,](\d+)$/.exec(text.trim())?.[1]?.length ?? 0;

/**
 * What a key makes of a text. A fraction and a decimal mark rule each other out; a blank parts a whole number from the
 * fraction behind it; a sign stands in front and turns. What would make no number does nothing.
 */
export const press = (text: string, key: PadKey, offered = ''): string => {
  // A second mark, or a fraction, says that the digits behind the offer are a reading of their own.
  if (offered.includes('.') && text.startsWith(offered) && (key === '.' || key === '/' || key === ' '))
    return press(text.slice(offered.length), key);
  const fraction = /[ /]/.test(text);
  switch (key) {
    case 'back':
      return text.slice(0, -1);
    case '-':
      return text.startsWith('-') ? text.slice(1) : `-${text}`;
    case '.':
      return text.includes('.') || fraction ? text : `${text}.`;
    case '/':
      return text.includes('.') || text.includes('/') || !/\d$/.test(text) ? text : `${text}/`;
    case ' ':
      return text.includes('.') || fraction || !/\d$/.test(text) ? text : `${text} `;
    default:
      return text.length < 16 ? text + key : text;
  }
};
