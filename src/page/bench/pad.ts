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
 * What a key makes of a text. A fraction and a decimal mark rule each other out; a blank parts a whole number from the
 * fraction behind it; a sign stands in front and turns. What would make no number does nothing.
 */
export const press = (text: string, key: PadKey): string => {
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
