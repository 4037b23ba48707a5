import { figuresIn } from './spaced-readings.ts';

/** Rows and columns as spreadsheets put them on the clipboard: tabs, line breaks, quotes round what holds either. */
export const readTable = (text: string): string[][] => {
  const rows: string[][] = [[]];
  let cell = '';
  let quoted = false;
  const end = () => {
    rows.at(-1)!.push(cell.trim());
    cell = '';
  };
  for (let i = 0; i < text.length; i += 1) {
    const c = text[i]!;
    if (quoted) {
      if (c !== '"') cell += c;
      else if (text[i + 1] === '"') {
        cell += '"';
        i += 1;
      } else quoted = false;
      // A quote opens a cell only at its beginning: 2.2515" is inches.
    } else if (c === '"' && cell === '' && closesCell(text, i)) quoted = true;
    else if (c === '\t') end();
    else if (c === '\n') {
      end();
      rows.push([]);
    } else if (c !== '\r') cell += c;
  }
  end();
  return rows.filter((row) => row.some((one) => one !== ''));
};

/** Whether a quote at `at` has a partner that ends its cell. */
const closesCell = (text: string, at: number): boolean =>
  /^"(?:[^"]|"")*"(?=[\t\r\n]|$)/.test(text.slice(at));

export const writeTable = (rows: ReadonlyArray<readonly string[]>): string =>
  rows
    .map((row) =>
      row.map((cell) => (/[\t\n"]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join('\t'),
    )
    .join('\n');

const NUMBER =
  /^[+\-\u2212±]?\s*(?:\d|[.,]\d)[\d\s.,/\-\u00a0\u202f]*(?:e[+-]?\d+)?\s*(?:["'′″°µ%A-Za-z/()^²³·]{0,12})$/u;

/** A cell that holds a figure, with or without a unit behind it. */
export const isFigure = (cell: string): boolean => NUMBER.test(cell);

/** Unit said by the head of a column: `Bore (mm)`, `Bore [in]`, `Bore, mm`. */
export const unitOfHead = (head: string): string | undefined =>
  /(?:\(|\[|,\s*)([A-Za-zµ°"/%]{1,8})[)\]]?\s*$/u.exec(head)?.[1];

export interface Readings {
  /** Entry as typed: readings of one station parted by `;`, stations by `|`. */
  text: string;
  count: number;
}

/**
 * A column that only counts the rows: 1, 2, 3 and so on, beside figures that are no counts themselves, or under a head that
 * says so.
 */
export const isCount = (rows: ReadonlyArray<readonly string[]>, head = ''): boolean => {
  const isNumber = /^(?:no|nr|#|pos|item|line|row)\b\.?$|^#$/i.test(head);
  return (
    rows.length > (isNumber ? 0 : 1) &&
    rows.every(
      (row, i) =>
        row.length > 1 &&
        /^\d+\.?$/.test(row[0]!) &&
        Number.parseInt(row[0]!, 10) === Number.parseInt(rows[0]![0]!, 10) + i &&
        (isNumber || row.slice(1).every((cell) => /[.,/]/.test(cell) || !/\d/.test(cell))),
    )
  );
};

/** Several figures with blanks between them in one cell are as many readings. */
const partedAtBlanks = (cell: string): string[] => {
  const figures = figuresIn(cell) ?? [];
  return figures.length > 1 && figures.every(({ figure }) => /[.,]/.test(figure))
    ? figures.map(({ figure, unit }) => (unit ? `${figure} ${unit}` : figure))
    : [cell];
};

/**
 * Columns of figures as one entry: a single column is the readings of one place; several columns are the readings of
 * one row each, the rows being the stations along the length. A head is left out, but for the unit it names, and so is a
 * column that numbers the rows.
 */
export const readingsFrom = (table: ReadonlyArray<readonly string[]>): Readings | undefined => {
  const [first, ...others] = table;
  if (!first) return undefined;
  const headed = others.length > 0 && !first.some(isFigure);
  const filled = (headed ? others : table).map((row) => row.filter((cell) => cell !== ''));
  const rows = (isCount(filled) ? filled.map((row) => row.slice(1)) : filled).map((row) =>
    row.flatMap(partedAtBlanks),
  );
  const cells = rows.flat();
  if (cells.length === 0 || !cells.every(isFigure)) return undefined;
  const unit = headed ? first.map(unitOfHead).find((found) => found !== undefined) : undefined;
  const bare = cells.every((cell) => !/[A-Za-zµ"]/u.test(cell));
  const list = rows.every((row) => row.length === 1)
    ? cells.join('; ')
    : rows.map((row) => row.join('; ')).join(' | ');
  return { text: unit && bare ? `${list} ${unit}` : list, count: cells.length };
};
