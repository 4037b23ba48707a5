import type { CellRecord } from '../../../shared/sheet/format.ts';
import type { Slip } from '../../../src/engine/rows/results.ts';
import { Asker, valuesIn } from './asker.ts';
import { cleanSheet, type Habits, type Site, type System } from './clean-sheet.ts';
import { Draw } from './draw.ts';
import { entrySlips, readingSlips } from './inject.ts';

export interface FalseAlarms {
  sheets: number;
  readings: number;
  /** Questions by kind of slip. */
  byKind: Record<string, number>;
  total: number;
  /** A few of them in words. */
  samples: string[];
}

const kindOf = (slip: Slip): string => slip.key.split(':')[0] as string;

/** Questions asked on sheets without a slip. */
export function falseAlarms(sheets: number, seed: number, habits?: Habits): FalseAlarms {
  const draw = new Draw(seed);
  const asker = new Asker();
  const found: FalseAlarms = { sheets, readings: 0, byKind: {}, total: 0, samples: [] };
  for (let i = 0; i < sheets; i++) {
    const { file, readings } = cleanSheet(draw, habits);
    found.readings += readings;
    for (const [cell, slips] of asker.ask(file))
      for (const slip of slips) {
        found.total++;
        found.byKind[kindOf(slip)] = (found.byKind[kindOf(slip)] ?? 0) + 1;
        const text = file.cells.find((one) => one.id === cell) as CellRecord;
        if (found.samples.length < 40)
          found.samples.push(
            `sheet ${i} ${text.name} ${text.entry} / ${text.measured?.entry}: ${slip.message}`,
          );
      }
  }
  asker.close();
  return found;
}

export interface Caught {
  made: number;
  /** Asked about at the place where it was made, or at another that names it, as what it is. */
  named: number;
  /** Asked about there at all. */
  asked: number;
  /** Of those that move the size by more than it may vary anyway: made, and named. */
  madePlain: number;
  namedPlain: number;
  /** The text offered is worth what the right one was, to two of its last places. */
  right: number;
}

function same(offer: string | undefined, right: string): boolean {
  if (offer === right) return true;
  const [a, b] = [offer === undefined ? undefined : valuesIn(offer), valuesIn(right)];
  if (!a || !b || a.length !== b.length) return false;
  return a.every((value, i) => Math.abs(value - (b[i] as number)) <= (/in$/.test(right) ? 5.1e-6 : 2.1e-6));
}

/** The scatter of a reading without a slip, SI: the range of its list, of one alone what it may be out by. */
function scatterOf({ stations, loose }: Site, { unit }: System): number {
  const values = stations.flat();
  const range = values.length > 1 ? Math.max(...values) - Math.min(...values) : loose;
  return range * (unit === 'in' ? 0.0254 : 1e-3);
}

/** Greatest change of a reading between two texts, SI. */
function movedBy(right: string | undefined, wrong: string | undefined): number {
  const [a, b] = [valuesIn(right ?? ''), valuesIn(wrong ?? '')];
  return Math.max(0, ...(a ?? []).map((value, i) => Math.abs(value - (b?.[i] ?? value))));
}

/** Slips of each kind made one at a time, each on a sheet of its own, and how many of them are asked about. */
export function caught(sheets: number, seed: number, habits?: Habits): Record<string, Caught> {
  const asker = new Asker();
  const all: Record<string, Caught> = {};
  const note = (kind: string, slips: readonly Slip[], right: string | undefined, plain: boolean): void => {
    const one = all[kind] ?? { made: 0, named: 0, asked: 0, madePlain: 0, namedPlain: 0, right: 0 };
    all[kind] = one;
    const named = slips.some((slip) => kindOf(slip) === kind);
    one.made++;
    if (slips.length > 0) one.asked++;
    if (named) one.named++;
    if (plain) one.madePlain++;
    if (plain && named) one.namedPlain++;
    if (right !== undefined && slips.some((slip) => same(slip.offer, right))) one.right++;
  };
  for (const [kind, way] of Object.entries(readingSlips)) {
    const draw = new Draw(seed);
    for (let i = 0; i < sheets; i++) {
      const sheet = cleanSheet(draw, habits);
      const sites = sheet.sites.filter((site) => way.at(site));
      if (sites.length === 0) continue;
      const site = draw.of(sites);
      const cell = sheet.file.cells.find((one) => one.id === site.cell) as CellRecord;
      const text = () => (site.field === 'entry' ? cell.entry : cell.measured?.entry);
      const right = text();
      const own = scatterOf(site, sheet.system);
      if (!way.make(sheet, site, draw)) continue;
      const all = asker.ask(sheet.file);
      const slips = all.get(site.cell) ?? [];
      // One question may name two lines that do not go together.
      const beside = [...all.values()].flat().filter((slip) => slip.message.endsWith(`\`${cell.name}\`?`));
      note(
        kind,
        [...slips.filter((slip) => slip.field === site.field), ...beside],
        right,
        movedBy(right, text()) > own,
      );
    }
  }
  for (const [kind, make] of Object.entries(entrySlips)) {
    const draw = new Draw(seed);
    for (let i = 0; i < sheets; i++) {
      const sheet = cleanSheet(draw, habits);
      const before = new Map(sheet.file.cells.map((cell) => [cell.id, cell.entry]));
      const made = make(sheet);
      if (!made) continue;
      const slips = asker.ask(sheet.file).get(made.cell) ?? [];
      note(
        kind,
        slips.filter((slip) => slip.field === made.field),
        before.get(made.cell),
        true,
      );
    }
  }
  asker.close();
  return all;
}
