import { describe, expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import { cautionTexts } from '../../cells/record/caution.ts';
import type { CellKind } from '../../cells/record/cell.ts';
import {
  broaching,
  centres,
  cutting,
  fitEdge,
  honing,
  licensed,
  lifting,
  milling,
  oldParts,
  powerOff,
  pressGuard,
  pressStop,
  pressureTest,
  reaming,
  solvents,
  wheel,
} from '../../cells/record/hazards.ts';

const kinds = [...library.kinds.values()];
const purposeOf = ({ title, purpose }: CellKind) => `${title}. ${purpose}`;
const named = (...keys: string[]) => keys;

/**
 * Where a hazard belongs: at the kinds named, and at whatever kind says of itself that it is for such work, those still to
 * be written among them.
 */
const BELONGS: Array<[hazard: string, text: string, kinds: string[], says?: RegExp]> = [
  [
    'old gaskets, packing, linings and paint',
    oldParts,
    named(
      'bore-clean-up',
      'bush-press',
      'end-float',
      'backlash',
      'journal-undersize',
      'line-bore-shift',
      'shim-pack',
      'split-shell-crush',
      'piston-ring',
      'build-up',
    ),
  ],
  [
    'lifting',
    lifting,
    named(
      'bush-press',
      'interference-fit',
      'shrink-fit',
      'taper-draw-up',
      'line-bore-shift',
      'journal-undersize',
      'backlash',
    ),
  ],
  [
    'a press',
    pressGuard,
    named('interference-fit', 'bush-press', 'bush-close-in', 'ram-trace', 'lead-chamfer', 'bush-out'),
    /\bpress home|pressed home|\bram\b/i,
  ],
  [
    'where to stop a press',
    pressStop,
    named('interference-fit', 'bush-press', 'bush-close-in', 'ram-trace', 'lead-chamfer'),
  ],
  [
    'fatigue at the edge of a fit',
    fitEdge,
    named('interference-fit', 'shrink-fit', 'taper-draw-up', 'ram-trace', 'shaft-torque'),
  ],
  ['a grinding wheel', wheel, named('journal-undersize', 'build-up', 'spindle-speed'), /\bgrind|\breground/i],
  [
    'broaching',
    broaching,
    named('broach-passes', 'broach-guide', 'push-mandrel', 'groove-in-bore', 'key-size'),
    /\bbroach/i,
  ],
  [
    'milling',
    milling,
    named('relief-in-bore', 'key-size', 'spindle-speed'),
    /\bmill(ed|ing)\b|keyseat cutter/i,
  ],
  ['reaming', reaming, named('finishing-stock', 'bought-bush'), /\bream/i],
  [
    'turning between centres',
    centres,
    named('journal-undersize', 'build-up', 'taper-two-diameters', 'spindle-speed'),
    /between centres/i,
  ],
  [
    'drilling and turning',
    cutting,
    named('bore-clean-up', 'line-bore-shift', 'bolt-circle', 'oil-hole', 'tap-drill', 'turned-head'),
    /\bdrill/i,
  ],
  ['solvents before bonding', solvents, named('retaining-compound'), /\bbonded|retaining compound/i],
  [
    'power off before a hand turns it',
    powerOff,
    named(
      'backlash',
      'end-float',
      'running-clearance',
      'rule-of-thumb-clearance',
      'bush-misalignment',
      'piston-ring',
      'line-bore-shift',
    ),
  ],
  ['honing', honing, named('piston-ring', 'finishing-stock'), /\bhon(e|ed|ing)\b/i],
  ['a pressure test, and a fire pump out of service', pressureTest, named('piston-ring', 'wall-left')],
  [
    'what an authority licenses',
    licensed,
    named(
      'bush-held',
      'bush-out',
      'drilled-screw',
      'pin-in-shear',
      'thread-for-worn-hole',
      'thread-engagement',
    ),
  ],
];

describe('each hazard is said where it belongs', () => {
  test.each(BELONGS)('%s', (_, text, keys, says) => {
    const unknown = keys.filter((key) => !library.kinds.has(key));
    expect(unknown, 'kinds that the library does not have').toEqual([]);
    const silent = kinds
      .filter((kind) => keys.includes(kind.key) || says?.test(purposeOf(kind)))
      .filter((kind) => !cautionTexts(kind).includes(text))
      .map(({ key }) => key);
    expect(silent).toEqual([]);
  });
});

test('no caution speaks against another', () => {
  const all = new Set(kinds.flatMap(cautionTexts));
  for (const text of all) {
    // One place says at what the press stops, and no hand feels for heat.
    if (text !== pressStop) expect(text).not.toMatch(/past the plan|1\.5 times the plan/i);
    expect(text).not.toMatch(/feel .*(heat|warm|hot).*by hand/i);
    expect(text).not.toMatch(/see the cautions of/i);
  }
});
