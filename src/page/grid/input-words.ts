import type { CellInput } from '../../../cells/record/cell.ts';

export interface InputLineProps {
  cell: string;
  input: CellInput;
}

/** What a blank input asks for. One that the template left open is to be filled in, though the cell can do without. */
export const blankWords = (input: CellInput, leftOpen: boolean): string =>
  !input.optional ? 'to be filled in' : leftOpen ? 'to be filled in where known' : 'may stay blank';

export interface FieldProps extends InputLineProps {
  text: string | undefined;
  label: string;
  leftOpen: boolean;
  example: string | undefined;
  onCommit: (text: string) => void;
}

export const emptyWords = (input: CellInput, leftOpen: boolean): string =>
  input.default ? `default: ${input.default}` : input.optional && !leftOpen ? 'none' : 'choose …';
