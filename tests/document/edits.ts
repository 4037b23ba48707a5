import fc from 'fast-check';
import type { SheetDocument } from '../../src/document/sheet-document.ts';
import { walk } from '../walk.ts';

/** One random command; `pick`s choose the line, the text and the place, whatever the sheet looks like by then. */
export interface Edit {
  command: (typeof COMMANDS)[number];
  pick: number;
  other: number;
}

const COMMANDS = [
  'entry',
  'limit',
  'input',
  'measured',
  'clear',
  'note',
  'rename',
  'unname',
  'add',
  'delete',
  'move',
  'copy',
  'title',
  'units',
  'batch',
] as const;

export const edit: fc.Arbitrary<Edit> = fc.record({
  command: fc.constantFrom(...COMMANDS),
  pick: fc.nat(1000),
  other: fc.nat(1000),
});

export const SEED = { seed: 20, numRuns: walk(50, 1500) };

const NAMES = ['bore', 'hole', 'press', 'shaft', 'wall', 'journal', 'œil', 'bush_od_2', 'Ø', '2x', 'x y'];

/** Does one random command; what cannot be done on this sheet does nothing. */
export function apply(sheet: SheetDocument, { command, pick, other }: Edit): void {
  const order = sheet.order();
  const at = (n: number) => order[n % Math.max(order.length, 1)] ?? '';
  const name = NAMES[other % NAMES.length]!;
  const formula = `=${sheet.cell(at(other))?.name ?? name} * ${pick} + {${name}} - ${name}`;
  const [id, second] = [at(pick), at(other)];
  const place = other % 7 === 0 ? null : second;
  if (command === 'entry') sheet.setEntry(id, other % 5 === 0 ? `${pick} in` : formula);
  else if (command === 'limit') sheet.setField(id, 'limits.upper', formula);
  else if (command === 'input') sheet.setField(id, `inputs.${name}`, other % 3 === 0 ? 'press' : formula);
  else if (command === 'measured') sheet.setField(id, 'measured', { entry: `${pick} in`, gauge: name });
  else if (command === 'clear') sheet.setField(id, other % 2 === 0 ? 'measured' : 'entry', undefined);
  else if (command === 'note') sheet.setField(id, 'measured.note', `note ${pick} \ud800 {`);
  else if (command === 'rename') sheet.renameCell(id, name);
  else if (command === 'unname') sheet.renameCell(id, '');
  else if (command === 'add')
    sheet.addCell(place, { label: name, entry: formula }, { nameFromLabel: pick % 2 === 0 });
  else if (command === 'delete' && order.length > 1) sheet.deleteCells([id]);
  else if (command === 'move') sheet.moveCells([id, second], place);
  else if (command === 'copy' && order.length < 60) sheet.duplicateCells([id, second]);
  else if (command === 'title') sheet.setTitle('customer', pick % 3 === 0 ? undefined : `${name} ${pick}`);
  else if (command === 'units')
    sheet.setUnits({ length: pick % 2 === 0 ? 'in' : 'mm', both: pick % 3 === 0 });
  else if (command === 'batch') {
    sheet.batch('several', () => {
      apply(sheet, { command: 'add', pick, other });
      apply(sheet, { command: 'rename', pick: other, other: pick });
      apply(sheet, { command: 'delete', pick, other });
    });
  }
}
