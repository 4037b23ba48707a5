import { describe, expect, test } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { WorkedExample } from '../../cells/record/cell.ts';
import { sheetWith } from '../outside/cells/example-sheet.ts';

/** Entries that no part can have, by cell. Each is refused: a figure worked out from it could be cut to. */
const impossible: Readonly<Record<string, readonly string[]>> = {
  'bearing-pressure': ['turning_speed: -1 rpm'],
  'bolt-preload': [
    'own_nut_factor: -0.2',
    'own_nut_factor: 20',
    'torque_applied: -1 N.m',
    'torque_applied: 0 N.m',
  ],
  'bought-bush': ['journal: 0 mm'],
  'broach-guide': ['last_tooth: 0.1 in', 'shim: 0 in', 'guide_clearance: 0.31 in'],
  'broach-passes': ['rise: 0 in', 'friction_share: -1'],
  'bush-held': ['seizing: 0', 'press_torque: -1 N.m', 'load: 0 N'],
  'arc-clocking': ['arc: -1 mm', 'hole: 90 mm'],
  'bush-out': [
    'bush_bore: 60 mm',
    'breakaway: 0.5',
    'bond_left_hot: 2',
    'grip_force: -1 N',
    'chilled_to: 40 degC',
  ],
  'bush-press': ['rated_pressure: 0 MPa'],
  'end-float': ['width_2: -1 mm', 'face_runout_1: -1 mm'],
  'film-thickness': ['heat_of_oil: 0'],
  'drilled-screw': ['bored: 0.3 in', 'off_centre: -1 mm', 'load: -1 kN', 'proof: 0 MPa'],
  'from-original': ['within: 0 mm', 'original: 0 mm'],
  gauge: ['division: 0 um', 'scatter: -1 um'],
  'groove-in-bore': ['groove_width: 60 mm', 'grooves: 1.5', 'side_depth: 0.1 mm', 'hole: 0 mm'],
  'interference-fit': ['length: 0 mm', 'friction: 0', 'friction: -0.1', 'inner_roughness: -1 um'],
  'journal-undersize': ['case_depth: -1 mm'],
  'key-size': ['key_length: 0 mm', 'torque: -1 N.m'],
  'line-bore-shift': ['pressure_angle: 0 deg'],
  material: ['own_yield: 0 MPa', 'own_density: -1 kg/m3'],
  'oil-flow': ['clearance: 0 mm', 'off_centre: 2', 'grooves: 1.5', 'pressure: -1 bar'],
  'oil-hole': ['lean: 85 deg', 'offset: 30 mm', 'apart: 0 deg'],
  'pin-in-shear': ['pin_hole: 30 mm', 'planes: 3'],
  'piston-ring': ['gap_bore: 0 mm'],
  'pressed-bush-hot': ['close_in_per_interference: -0.5', 'close_in_per_interference: 65'],
  'push-mandrel': ['clearance: 1 in', 'force: 0 N', 'collar: -1 mm'],
  'ram-trace': ['friction_here: -0.1'],
  'relief-in-bore': ['cutter: 3 in', 'depth: 0.8 in', 'to_bridge: 1.6 in'],
  'retaining-compound': [
    'shear_strength: 0 MPa',
    'joint_share: 50',
    'hot_share: -0.5',
    'press_pressure: -1 MPa',
    'friction: 0',
  ],
  'rule-of-thumb-clearance': ['turning_speed: -1 rpm'],
  'shim-pack': ['shim_2: 0 mm', 'pack_put_in: -1 mm'],
  'shrink-fit': ['outer_bore: -1 mm', 'cold_expansion: -1e-5 1/K', 'carrying_loss: -5 K'],
  'sine-bar': ['blocks: -1 mm'],
  'tap-drill': ['share: 0', 'share: 1.5'],
  'tap-lead': ['lead_turns: 0', 'screw_major: 0.5 in'],
  'thread-for-worn-hole': ['hole: 0 mm', 'least_share: 80 %'],
  'turned-head': ['head: 0.2 in', 'flats: 20 mm', 'load: -1 N', 'bears: 0 MPa'],
  'snap-ring-groove': ['groove_cut: 60 mm', 'yield: 0 MPa', 'shoulder: 0 mm', 'thrust: 0 N'],
  'spindle-speed': ['speed_set: -1 rpm'],
  'split-shell-crush': ['shell_wall: -1 mm', 'shell_length: 0 mm'],
  'taper-by-pins': ['over_low: 1 mm', 'pin: 40 mm'],
  'taper-draw-up': ['length: 0 mm', 'friction: 0', 'outer_roughness: -1 um'],
  'taper-pin': ['length: 500 mm', 'hub: 10 mm', 'torque: 0 N.m', 'left_to_ream: 8 mm'],
  'taper-two-diameters': ['between_centres: 0 mm'],
  'thread-engagement': ['engaged: 0 mm', 'bolt_strength: 0 MPa'],
  'thread-insert': ['length_share: 0', 'hole_found: 20 mm'],
  'thread-limits': ['hole: -1 mm'],
  'three-wire': ['starts: 0', 'starts: 1.5'],
  'wires-to-cut-to': ['pitch_diameter: 0 mm'],
  'woodruff-key': ['shaft: 0.05 in', 'torque: 0 N.m'],
  'yield-hot-loose-cold': ['hot_yield: 0 MPa'],
};

const all = (key: string): WorkedExample['inputs'] =>
  Object.assign({}, ...(library.kinds.get(key)?.examples ?? []).map(({ inputs }) => inputs).reverse());

describe.each(Object.entries(impossible))('%s', (key, entries) => {
  const faces = (library.kinds.get(key)?.outputs ?? []).filter(({ face }) => face).map(({ name }) => name);

  test.each(entries)('%s is refused', (line) => {
    const [input = '', entry = ''] = line.split(': ');
    const outputs = sheetWith(key, { ...all(key), [input]: entry }).byName('it')?.outputs;
    expect(faces.filter((name) => outputs?.[name]?.planned !== undefined)).toEqual([]);
  });
});

test('the examples themselves are not refused', () => {
  for (const key of Object.keys(impossible)) {
    const outputs = sheetWith(key, all(key)).byName('it')?.outputs ?? {};
    expect(
      Object.values(outputs).some(({ planned, measured }) => planned ?? measured),
      key,
    ).toBe(true);
  }
});
