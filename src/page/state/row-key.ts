declare const isRowKey: unique symbol;

/**
 * A row of the sheet's grid: the line of a cell, or one input or output of a library cell. Made and read in this file
 * alone; an id may hold any character, so a stroke in it is written otherwise.
 */
export type RowKey = string & { readonly [isRowKey]: true };

const written = (text: string): string => text.replace(/[%/]/g, (one) => (one === '%' ? '%25' : '%2f'));
const unwritten = (text: string): string => text.replaceAll('%2f', '/').replaceAll('%25', '%');

export const lineRow = (cell: string): RowKey => written(cell) as RowKey;
export const inputRow = (cell: string, input: string): RowKey =>
  `${written(cell)}/in/${written(input)}` as RowKey;
export const outputRow = (cell: string, output: string): RowKey =>
  `${written(cell)}/out/${written(output)}` as RowKey;

/** What a row shows: the input or the output, where it is not the line of the cell itself. */
export const partsOfRow = (row: RowKey): { cell: string; input?: string; output?: string } => {
  const [cell = '', side, name = ''] = row.split('/');
  return {
    cell: unwritten(cell),
    ...(side === 'in' ? { input: unwritten(name) } : {}),
    ...(side === 'out' ? { output: unwritten(name) } : {}),
  };
};

export const cellOfRow = (row: RowKey): string => partsOfRow(row).cell;
export const isLineRow = (row: RowKey): boolean => !row.includes('/');

/** @returns the output a row shows: `value` for a plain line. */
export const outputOfRow = (row: RowKey): string | undefined =>
  isLineRow(row) ? 'value' : partsOfRow(row).output;

/** The row of an element of the grid, as it was written there. */
export const rowOf = (element: HTMLElement): RowKey => element.dataset.row as RowKey;
