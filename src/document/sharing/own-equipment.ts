import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';

/** A gauge or a press of the shop, as it was filled in once. */
export interface Equipment {
  kind: string;
  /** As its line was called. */
  label: string;
  /** What of its inputs stays the same from job to job. */
  inputs: Readonly<Record<string, string>>;
  /** Name of the device of the shop that it came from; absent where it was kept here. */
  from?: string;
}

/** What the library says of the inputs of a kind: those of equipment, and whether one is a choice (which gauge it is). */
export type OwnInputs = (kind: string) => ReadonlyArray<{ name: string; choice?: string | undefined }>;

/** Name of the shop's setting. */
const KEY = 'equipment';

type Settings = {
  setting(key: string): Promise<unknown>;
  changeSetting(key: string, change: (now: unknown) => unknown): Promise<unknown>;
};

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

/** What is kept, as far as it can be read: a file from elsewhere may have brought it. */
function readEquipment(kept: unknown): Equipment[] {
  if (!Array.isArray(kept)) return [];
  return kept.flatMap((one: Partial<Equipment> | undefined) => {
    if (!isText(one?.kind) || typeof one.inputs !== 'object' || one.inputs === null) return [];
    const inputs = Object.fromEntries(Object.entries(one.inputs).filter(([, text]) => isText(text)));
    const { kind, label, from } = one;
    return [{ kind, label: isText(label) ? label : '', inputs, ...(isText(from) && { from }) }];
  });
}

export const equipmentOf = async (shop: Pick<Settings, 'setting'>): Promise<Equipment[]> =>
  readEquipment(await shop.setting(KEY));

/** The same figures of the same kind; what it is called is each shop's own. */
export const isSame = (a: Equipment, b: Equipment): boolean =>
  a.kind === b.kind &&
  Object.keys(a.inputs).length === Object.keys(b.inputs).length &&
  Object.entries(a.inputs).every(([name, text]) => b.inputs[name] === text);

export const isKept = (kept: readonly Equipment[], one: Equipment): boolean =>
  kept.some((other) => isSame(one, other));

/** In one transaction: two presses at once, or two tabs, would each write down what it read, and one of them would be gone. */
const changeKept = async (
  shop: Settings,
  change: (kept: readonly Equipment[]) => readonly Equipment[],
): Promise<Equipment[]> => {
  let next: Equipment[] | undefined;
  await shop.changeSetting(KEY, (kept) => {
    next = [...change(readEquipment(kept))];
    return next;
  });
  return next ?? equipmentOf(shop);
};

/** @returns what is kept then. */
export const keepEquipment = (shop: Settings, one: Equipment): Promise<Equipment[]> =>
  changeKept(shop, (kept) => (isKept(kept, one) ? kept : [...kept, one]));

/** @returns what is kept then. */
export const dropEquipment = (shop: Settings, one: Equipment): Promise<Equipment[]> =>
  changeKept(shop, (kept) => kept.filter((other) => !isSame(one, other)));

/** What of a line can be kept for the next job; undefined where nothing of it is filled in. A formula belongs to its sheet. */
export function equipmentIn(cell: CellRecord, own: OwnInputs): Equipment | undefined {
  if (cell.kind === undefined) return undefined;
  const inputs = Object.fromEntries(
    own(cell.kind).flatMap(({ name }) => {
      const text = cell.inputs?.[name]?.trim() ?? '';
      return text === '' || text.startsWith('=') ? [] : [[name, text]];
    }),
  );
  if (Object.keys(inputs).length === 0) return undefined;
  return { kind: cell.kind, label: cell.label ?? cell.name ?? '', inputs };
}

/** The one that a line can only mean: of the kind of gauge the template has there, and there is no second such. */
function meantBy(cell: CellRecord, kept: readonly Equipment[], own: OwnInputs): Equipment | undefined {
  const choices = own(cell.kind as string).filter(({ choice }) => choice !== undefined);
  const fits = kept.filter(
    (one) =>
      one.kind === cell.kind &&
      choices.every(({ name }) => one.inputs[name] === (cell.inputs?.[name] || cell.examples?.[name])),
  );
  const named = fits.filter(({ label }) => label === cell.label);
  return fits.length === 1 ? fits[0] : named.length === 1 ? named[0] : undefined;
}

/**
 * A job just begun, with the shop's own gauges and presses filled in where its template asks for one and only one can be
 * meant. A line in which anything of the equipment stands already is left as it is.
 */
export function withEquipment(
  job: SheetFile,
  kept: readonly Equipment[],
  own: OwnInputs,
): { file: SheetFile; taken: string[] } {
  const taken: string[] = [];
  const cells = job.cells.map((cell) => {
    const names = cell.kind === undefined ? [] : own(cell.kind).map(({ name }) => name);
    const asks = names.some((name) => cell.examples?.[name] !== undefined);
    if (!asks || names.some((name) => cell.inputs?.[name])) return cell;
    const one = meantBy(cell, kept, own);
    if (!one) return cell;
    taken.push(cell.label ?? one.label);
    return { ...cell, inputs: { ...cell.inputs, ...one.inputs } };
  });
  return { file: { ...job, cells }, taken };
}
