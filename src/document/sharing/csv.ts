import { COLUMNS, type ExportLine, placesOf, plainNumber } from './export-line.ts';

/**
 * Beginnings that make a spreadsheet take a text for a formula or a command, the full-width forms included, which some
 * turn into the narrow ones.
 */
const SIGN = '[=+\\-@\\t\\r\\n\\uff1d\\uff0b\\uff0d\\uff20|%]';
/** A sign that acts at the beginning, or behind what some take for the end of a field; what cannot be seen hides neither. */
const ACTS = new RegExp(
  `(?:^|[,;\\t\\r\\n|])[\\s"'\\p{Cc}\\p{Cf}\\p{Zs}\\p{Default_Ignorable_Code_Point}\\u2800]*${SIGN}`,
  'u',
);
const NUMBER = /^-?\d+(?:\.\d+)?(?:e[+-]?\d+)?$/;

/** A field by RFC 4180, quoted always. An apostrophe goes before a text that a spreadsheet would compute. */
export function csvField(text: string): string {
  const harmless = ACTS.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return `"${harmless.replaceAll('"', '""')}"`;
}

/** The sheet as comma-separated values, RFC 4180, with a byte order mark so that µ and Ø are read right. */
export function csvOf(lines: readonly ExportLine[]): string {
  const rows = lines.map((line) => {
    const { figure, unit } = line;
    const write = (si: number) => plainNumber(si, unit, placesOf(figure!, unit));
    return [
      line.number,
      line.name,
      line.label,
      line.role,
      line.entry,
      figure ? write(figure.value) : '',
      figure ? unit.label : '',
      figure ? write(figure.low) : '',
      figure ? write(figure.high) : '',
      line.check,
    ];
  });
  return `\ufeff${[COLUMNS, ...rows].map((row) => row.map(csvField).join(',')).join('\r\n')}\r\n`;
}
