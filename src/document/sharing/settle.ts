import type { SettledSheet } from '../../../shared/sheet/fingerprint.ts';
import type { CellRecord, SheetFile, SheetUnits } from '../../../shared/sheet/format.ts';
import type { Handbook } from '../../language/parse.ts';
import { type QuantityAt, readIn, type Text, textsOf } from './own-units.ts';

/** What reading the texts of a sheet needs beside the sheet. */
export interface TextReader {
  quantityAt: QuantityAt;
  handbook: Handbook;
}

/** The same units, each the other one: a number that takes its unit from the sheet reads otherwise there. */
const otherUnits = ({
  length,
  temperature = length === 'in' ? 'degF' : 'degC',
  ...rest
}: SheetUnits): SheetUnits => ({
  ...rest,
  length: length === 'in' ? 'mm' : 'in',
  temperature: temperature === 'degF' ? 'degC' : 'degF',
});

/** Kinds that a number may be of whose cell does not say: those that take a unit from the sheet. */
const UNIT_TAKING = ['length', 'temperature'];

/** Puts the unit behind every number of a sheet that takes it from the sheet. No value changes. */
export function settle(file: SheetFile, { quantityAt, handbook }: TextReader): SettledSheet {
  const others = otherUnits(file.units);
  let bare = false;
  const hangs = (text: Text): boolean => {
    const [here, there] = [file.units, others].map((units) =>
      JSON.stringify({ ...readIn(text, units, handbook), problems: undefined, echo: undefined }),
    );
    return here !== there;
  };
  const settledText = (text: Text): string => {
    // Without a figure there is nothing that could lack a unit.
    if (!/\d/.test(text.text)) return text.text;
    if (text.quantity === undefined) {
      bare ||= UNIT_TAKING.some((quantity) => hangs({ ...text, quantity }));
      return text.text;
    }
    if (!hangs(text)) return text.text;
    const { committed, problems } = readIn(text, file.units, handbook);
    if (problems.length === 0 && !hangs({ ...text, text: committed })) return committed;
    bare = true;
    return text.text;
  };

  const cells = file.cells.map((cell) => {
    const changed = new Map<string, string>();
    let settled = cell;
    for (const text of textsOf(cell, quantityAt)) {
      const now = settledText(text);
      if (now === text.text) continue;
      settled = withText(settled, text.field.split('.'), now);
      changed.set(text.text, now);
    }
    // An answer goes by the text it was given to.
    return changed.size > 0 && cell.dismissed
      ? {
          ...settled,
          dismissed: cell.dismissed.map((one) => ({ ...one, text: changed.get(one.text) ?? one.text })),
        }
      : settled;
  });

  const byName = new Map(file.cells.flatMap((cell) => (cell.name ? [[cell.name, cell] as const] : [])));
  const ofVariant = (at: string, text: string): string => {
    const [name = '', input] = at.split('.');
    const cell = byName.get(name);
    if (!cell) return text;
    const quantity = input
      ? quantityAt(cell, `inputs.${input}`)
      : (cell.quantity ?? quantityAt(cell, 'entry'));
    return settledText({ cell, field: input ? `inputs.${input}` : 'entry', text, quantity, role: 'own' });
  };
  const variants = file.variants?.map((variant) => ({
    ...variant,
    entries: Object.fromEntries(
      Object.entries(variant.entries).map(([at, text]) => [at, ofVariant(at, text)]),
    ),
  }));

  const { referenceTemperature: reference } = file.title;
  const title =
    reference === undefined
      ? file.title
      : { ...file.title, referenceTemperature: settledText(ofTemperature(reference)) };
  return { file: { ...file, title, cells, ...(variants && { variants }) }, bare };
}

const ofTemperature = (text: string): Text => ({
  cell: { id: '', role: 'given' },
  field: 'at',
  text,
  quantity: 'temperature',
  role: 'given',
});

const withText = (cell: CellRecord, path: readonly string[], text: string): CellRecord =>
  put(cell, path, text) as unknown as CellRecord;

const put = (
  record: object,
  [key = '', ...rest]: readonly string[],
  text: string,
): Record<string, unknown> => ({
  ...record,
  [key]: rest.length === 0 ? text : put((record as Record<string, object>)[key] ?? {}, rest, text),
});
