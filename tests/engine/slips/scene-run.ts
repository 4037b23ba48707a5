import type { Slip } from '../../../src/engine/rows/results.ts';
import { type Asker, valuesIn } from './asker.ts';
import { Draw } from './draw.ts';
import { type Made, makeSlip, NUMBER_SLIPS } from './scene-slips.ts';
import { type Scene, SITUATIONS, type Situation, sceneOf } from './scenes.ts';

export interface Tally {
  /** Made where nothing on the sheet could tell: they do not count, and are not asked about. */
  untold: number;
  /** Made so that it moves a reading by more than it may honestly vary. */
  made: number;
  asked: number;
  /** Asked about at another line of the sheet and not there. */
  elsewhere: number;
  /** Lines with more than one question, and sheets with more than one line asked about. */
  twice: number;
  offered: number;
  true: number;
  missed: string[];
  untrue: string[];
  doubled: string[];
}

const none = (): Tally => ({
  untold: 0,
  made: 0,
  asked: 0,
  elsewhere: 0,
  twice: 0,
  offered: 0,
  true: 0,
  missed: [],
  untrue: [],
  doubled: [],
});

/** A shop: a small sheet of it by what there is to compare. */
export type SceneMaker = (situation: Situation, draw: Draw) => Scene;

export const KINDS = [...Object.keys(NUMBER_SLIPS), 'copied list'];

/** True where the text offered is worth what was read, to what the wrong text could tell of it. */
function isTrue(offer: string, scene: Scene, kind: string): boolean {
  const length = scene.pen.inch ? 'in' : 'mm';
  if (scene.field === 'inputs.divisions') return Number(offer) === Number(scene.stations[0]?.[0]);
  const [is, right] = [offer, scene.pen.write(scene.stations)].map((text) => valuesIn(text, length));
  if (!is || is.length !== right?.length) return false;
  const unit = scene.pen.inch ? 0.0254 : 1e-3;
  // A conversion or a half is known no better than to a step of what was written.
  const within = /mm for|radius/.test(kind)
    ? Math.max(1.01 * scene.pen.step, scene.pen.inch ? 4.1e-4 : 3e-3)
    : 0.6 * scene.pen.step;
  return is.every((value, i) => Math.abs(value - (right[i] as number)) <= within * unit);
}

/**
 * Where a slip counts: it must leave the reading where no good one of that shop can lie, by what else stands on the sheet. It moved by
 * more than what it is compared with leaves open (`loose`: the scatter of its list and its gauge, the tolerance of its plan,
 * its limits with what parts are worn by there, the room of its fit). A count of divisions has its limits alone to be compared
 * with, and a part out of them by less than they are wide is common: one that ends nearer is told from it by nothing. Nor is
 * a bore (all that is counted here) that is larger by up to three times their width: it may be worn.
 */
function isTold(scene: Scene, { moved, text }: Made): boolean {
  if (scene.situation !== 'gauge setting') return moved > scene.loose;
  if (moved * scene.pen.step <= scene.loose) return false;
  const { inputs, outputs } = scene.cell;
  const { lower, upper } = outputs?.size?.limits ?? {};
  const [set, division, low, high] = [inputs?.set_to, inputs?.division, lower, upper].map((one) =>
    Number.parseFloat(one ?? ''),
  ) as [number, number, number, number];
  const size = set + Number(inputs?.sense ?? 1) * Number(text.replace(/[^\d.+-]/g, '')) * division;
  // Limits are no finer than they are written.
  const width = Math.max(high - low, scene.pen.inch ? 1e-4 : 1e-3);
  return low - size > width || size - high > 3 * width;
}

const told = (slips: readonly Pick<Slip, 'key' | 'message'>[]): string =>
  slips.map((one) => `${one.key} ${one.message}`).join(' // ');

/** The texts of a scene, for people. */
const shown = ({ file }: Scene): string =>
  JSON.stringify(
    file.cells.map(({ name, entry, measured, limits, tolerance, inputs }) => ({
      name,
      entry,
      measured: measured?.entry,
      limits,
      tolerance,
      inputs,
    })),
  );

/** Slips of a kind in a situation, each on a sheet of its own. */
export function scenesAsked(
  kind: string,
  situation: Situation,
  count: number,
  asker: Asker,
  seed = 0,
  make: SceneMaker = sceneOf,
): Tally {
  const tally = none();
  for (let i = 0; i < count * 4 && tally.made < count; i++) {
    const draw = new Draw(
      seed + 7919 * i + 104729 * SITUATIONS.indexOf(situation) + 31 * KINDS.indexOf(kind),
    );
    const scene = make(situation, draw);
    const isCount = situation === 'gauge setting';
    if (isCount && !['sign', 'wrong digit', 'swapped digits', 'point one place out'].includes(kind)) continue;
    if (situation === 'list' && kind === 'copied list') continue;
    const made = makeSlip(kind, scene, draw);
    if (!made) continue;
    if (!isTold(scene, made)) {
      tally.untold++;
      continue;
    }
    const { cell, field } = scene;
    const text = isCount ? made.text.replace(/[^\d.+-]/g, '') : made.text;
    if (field === 'inputs.divisions') cell.inputs = { ...cell.inputs, divisions: text };
    else if (field === 'measured.entry') cell.measured = { ...cell.measured, entry: text };
    else cell.entry = text;
    tally.made++;
    const all = asker.askAll(scene.file);
    const slips = all.get(cell.id) ?? [];
    const others = [...all].filter(([id, of]) => id !== cell.id && of.length > 0);
    // One question may name two lines that do not go together.
    const named = others.some(([, of]) => of.some(({ message }) => message.includes(`\`${cell.name}\``)));
    if (slips.length > 0 || named) tally.asked++;
    else {
      if (others.length > 0) tally.elsewhere++;
      tally.missed.push(`${scene.pen.write(scene.stations)} -> ${text} of ${shown(scene)}`);
    }
    if (slips.length > 1 || slips.length + others.length > 1) {
      tally.twice++;
      tally.doubled.push(`${text} of ${shown(scene)}: ${[...all.values()].map(told).join(' && ')}`);
    }
    const offer = slips.find((one) => one.offer !== undefined)?.offer;
    if (offer === undefined) continue;
    tally.offered++;
    if (isTrue(offer, scene, kind)) tally.true++;
    else tally.untrue.push(`${scene.pen.write(scene.stations)} -> ${text}: ${offer} (${told(slips)})`);
  }
  return tally;
}

/** Lines asked about on scenes without a slip, of so many with readings. */
export function cleanScenes(
  situation: Situation,
  count: number,
  seed: number,
  asker: Asker,
  make: SceneMaker = sceneOf,
): { lines: number; asked: string[] } {
  const asked: string[] = [];
  let lines = 0;
  for (let i = 0; i < count; i++) {
    const scene = make(situation, new Draw(seed + 6007 * i));
    lines += scene.file.cells.filter(({ role, kind }) => role !== 'worked' && kind !== 'gauge').length;
    for (const [id, slips] of asker.askAll(scene.file))
      if (slips.length > 0) asked.push(`${id} of ${shown(scene)}: ${told(slips)}`);
  }
  return { lines, asked };
}
