import type { Draw } from './draw.ts';
import { sceneBy, type Ways } from './loft.ts';
import type { Situation } from './scenes.ts';

/**
 * A shop that mends winches and cider presses, written down before any of its sheets was computed and not changed since: small
 * pins and great rollers, gauges read to half a division, four or six readings around, the unit once or not at all, plans of
 * one-sided tolerance, bores by a dial whose hand may run the other way, some of them worn well out of their limits.
 */
const WINCHES: Ways = {
  title: 'winch shop',
  gauges: [
    { inch: false, step: 0.005, places: 3, sd: 0.003, to: 150 },
    { inch: false, step: 0.01, places: 2, sd: 0.004, to: 100 },
    { inch: false, step: 0.05, places: 2, sd: 0.03, to: 600 },
    { inch: false, step: 0.001, places: 3, sd: 0.001, to: 75 },
    { inch: true, step: 0.0005, places: 4, sd: 0.005, to: 300 },
    { inch: true, step: 0.0001, places: 4, sd: 0.0015, to: 100 },
  ],
  holes: ['barrel bore', 'pawl eye', 'idler hub bore', 'screw nut bore', 'pulley bore'],
  shafts: ['winding spindle', 'pawl pin', 'ratchet axle', 'press ram', 'brake stem'],
  neither: ['drum face', 'collar', 'key seat width', 'packing'],
  shapes: [[1], [1], [4], [6], [1, 1], [2, 2, 2], [4, 4], [4, 4, 4], [1, 1, 1, 1], [5]],
  apart: [';', '; '],
  bare: 0.4,
  from: 6,
  wear: { usual: 0.03, varies: 0.8, most: 0.2, none: 0.5 },
  dial: { to: 40, band: [4, 16] },
  worn: { share: 0.05, by: [1, 2.5], out: 0.25 },
  clearance: ['running clearance', 'float in the eye'],
  press: ['hub bore for the ring', 'ring outside'],
  ends: 'klmnopqr',
};

export const winchScene = (situation: Situation, draw: Draw) => sceneBy(WINCHES, situation, draw);
