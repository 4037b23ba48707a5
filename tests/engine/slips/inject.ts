import type { CellRecord } from '../../../shared/sheet/format.ts';
import { type CleanSheet, type Site, type System, writeReadings } from './clean-sheet.ts';
import type { Draw } from './draw.ts';

/** Where a slip was made. */
export interface Injected {
  cell: string;
  field: string;
}

type Sheet = CleanSheet & { system: System };

const INCH = 1;
const rounded = (value: number, { places }: System): number => Number(value.toFixed(places));

/** Writes the readings of a site anew with `change` applied to one of a list, or to the only one. */
function rewrite(
  sheet: Sheet,
  site: Site,
  draw: Draw,
  change: (value: number) => number | undefined,
): boolean {
  const all = site.stations.flat();
  const index = draw.whole(0, all.length - 1);
  const changed = change(all[index] as number);
  if (changed === undefined) return false;
  let n = 0;
  const stations = site.stations.map((station) => station.map((value) => (n++ === index ? changed : value)));
  put(sheet, site, writeReadings(stations, sheet.system, site.set));
  return true;
}

function put(sheet: Sheet, site: Site, text: string): void {
  const cell = sheet.file.cells.find((one) => one.id === site.cell) as CellRecord;
  if (site.field === 'entry') cell.entry = text;
  else if (cell.measured) cell.measured.entry = text;
}

/** Two neighbouring digits changed over in the number as written. */
function swapped(value: number, { places }: System, draw: Draw): number | undefined {
  const digits = [...value.toFixed(places)];
  const at = digits.flatMap((c, i) => (/\d/.test(c) ? [i] : []));
  const first = draw.whole(0, at.length - 2);
  const [a, b] = [at[first] as number, at[first + 1] as number];
  if (digits[a] === digits[b]) return undefined;
  [digits[a], digits[b]] = [digits[b] as string, digits[a] as string];
  return Number(digits.join(''));
}

const plain = (site: Site): boolean => site.set === undefined;
const counted = (site: Site): boolean => site.set !== undefined;

interface Way {
  /** Sites it can be made at. */
  at: (site: Site) => boolean;
  make: (sheet: Sheet, site: Site, draw: Draw) => boolean;
}

const ofValue = (
  change: (value: number, sheet: Sheet, draw: Draw) => number | undefined,
  at = plain,
): Way => ({
  at,
  make: (sheet, site, draw) => rewrite(sheet, site, draw, (value) => change(value, sheet, draw)),
});

/** The slips of readings: how each is made on a sheet that was right. */
export const readingSlips: Readonly<Record<string, Way>> = {
  sign: ofValue((value, { system }) => rounded(-value, system)),
  turn: ofValue((value, { system }, draw) =>
    rounded(value + (draw.chance(0.5) ? 1 : -1) * (system.unit === 'in' ? 0.025 : 0.5), system),
  ),
  frame: ofValue((value, { system }, draw) =>
    rounded(value + (draw.chance(0.5) ? 1 : -1) * (system.unit === 'in' ? INCH : 25), system),
  ),
  radius: ofValue((value, { system }) => rounded(value / 2, system)),
  decimal: ofValue((value, { system }, draw) => rounded(value * (draw.chance(0.5) ? 10 : 0.1), system)),
  'other-unit': ofValue((value, { system }) =>
    rounded(system.unit === 'in' ? value * 25.4 : value / 25.4, system),
  ),
  'swapped-digits': ofValue((value, { system }, draw) => swapped(value, system, draw)),
  mirrored: {
    at: counted,
    make: (sheet, site, draw) =>
      rewrite(sheet, site, draw, (value) => {
        const off = Math.round((value - (site.set as number)) * 10 ** sheet.system.places);
        return off === 0 ? undefined : rounded(2 * (site.set as number) - value, sheet.system);
      }),
  },
};

/** The slips of other entries: each is made at a cell that suits it, and gives the cell that is to be asked about. */
export const entrySlips: Readonly<Record<string, (sheet: Sheet) => Injected | undefined>> = {
  'hole-shaft': (sheet) =>
    changed(sheet, /^(seat_bore|stub_shaft)/, (text) =>
      text.replace(/[A-Za-z](?=\d$)/, (c) => (c === c.toUpperCase() ? c.toLowerCase() : c.toUpperCase())),
    ),
  'under-over': (sheet) => changed(sheet, /^undersize/, (text) => text.replace('under', 'over')),
  fraction: (sheet) => changed(sheet, /^width/, (text) => text.replace(/^(\d+) (\d+)\//, '$1$2/')),
  interference: (sheet) => {
    const bush = sheet.file.cells.find(
      (one) => /^bush_outside/.test(one.name ?? '') && one.entry?.startsWith('='),
    );
    if (!bush?.entry) return undefined;
    delete bush.measured;
    bush.entry = bush.entry.replace(/\+ ([\d.]+)/, (_, squeeze: string) => `+ ${Number(squeeze) * 10}`);
    const name = bush.name?.replace('bush_outside', 'interference');
    const asked = sheet.file.cells.find((one) => one.name === name) as CellRecord;
    return { cell: asked.id, field: 'entry' };
  },
  warm: (sheet) => {
    const cell = sheet.file.cells.find((one) => /^bush_bore/.test(one.name ?? '')) as CellRecord;
    sheet.file.cells.push({
      id: 'metal',
      role: 'cell',
      kind: 'material',
      edition: 1,
      name: 'bush_metal',
      inputs: { material: 'tin-babbitt' },
    });
    cell.material = 'bush_metal';
    cell.at = '38 degC';
    return { cell: cell.id, field: 'at' };
  },
};

function changed(sheet: Sheet, name: RegExp, change: (text: string) => string): Injected | undefined {
  const cell = sheet.file.cells.find((one) => name.test(one.name ?? ''));
  if (!cell?.entry) return undefined;
  const entry = change(cell.entry);
  if (entry === cell.entry) return undefined;
  cell.entry = entry;
  return { cell: cell.id, field: 'entry' };
}
