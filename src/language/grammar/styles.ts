import { styleTags, tags } from '@lezer/highlight';

/** What the editor may colour, by node of the grammar. Part of the grammar; the colours are the page's. */
export const highlighting = styleTags({
  'Number Fraction Mixed BareFraction BareMixed OtherPoint AskNumber': tags.number,
  'Unit Minute Second': tags.unit,
  'Fit Drill Thread': tags.constant(tags.name),
  'Side Tir K': tags.keyword,
  'CellName/Name CellName/Id': tags.variableName,
  'OutputName/Name': tags.propertyName,
  'FunctionName/Name': tags.function(tags.variableName),
  Text: tags.string,
  'Plus Minus Times "/" "^" Pm': tags.arithmeticOperator,
  CompareOp: tags.compareOperator,
  'ArgSep ReadingMark StationMark': tags.separator,
  '( )': tags.paren,
});
