import type { Draw } from './draw.ts';
import { sceneBy, type Ways } from './loft.ts';
import type { Situation } from './scenes.ts';

/**
 * A shop that mends log trolleys and lifting gates, written down before any of its sheets was computed and not changed since:
 * much wear, mostly inches, three readings around at two or three places, few lists without a unit, great bores by a dial
 * with coarse divisions, a good part of them opened out far beyond their limits before they come in.
 */
const TROLLEYS: Ways = {
  title: 'trolley shop',
  gauges: [
    { inch: true, step: 0.001, places: 3, sd: 0.012, to: 450 },
    { inch: true, step: 0.0005, places: 4, sd: 0.006, to: 150 },
    { inch: true, step: 0.0001, places: 4, sd: 0.002, to: 75 },
    { inch: false, step: 0.02, places: 2, sd: 0.015, to: 500 },
    { inch: false, step: 0.002, places: 3, sd: 0.0015, to: 125 },
  ],
  holes: ['wheel hub bore', 'gate hinge eye', 'bracket bore', 'liner', 'rocker housing'],
  shafts: ['wheel axle', 'hinge pin', 'lifting screw journal', 'gate stem', 'draw bar pin'],
  neither: ['tread width', 'flange', 'shoe', 'tongue'],
  shapes: [[1], [2], [3], [3], [1, 1, 1], [3, 3], [3, 3, 3], [2, 2], [8]],
  apart: ['; ', ' ; '],
  bare: 0.15,
  from: 12,
  wear: { usual: 0.06, varies: 0.9, most: 0.35, none: 0.3 },
  dial: { to: 30, band: [3, 10] },
  worn: { share: 0.1, by: [1, 4], out: 0.35 },
  clearance: ['clearance on the axle', 'running clearance', 'play of the hinge'],
  press: ['hub bore for the bush', 'bush outside'],
  ends: 'abcdefgh',
};

export const trolleyScene = (situation: Situation, draw: Draw) => sceneBy(TROLLEYS, situation, draw);
