import { annulus } from '../drawings/annulus.ts';
import { coldTemperature } from '../formulas/cold-temperature.ts';
import { defineCell } from '../record/cell.ts';
import { fitEdge, licensed, oldParts, pressGuard, pressStop } from '../record/hazards.ts';

export default defineCell({
  key: 'bush-out',
  edition: 1,
  title: 'Bush out again',
  purpose:
    'How a bush comes apart from its housing: the force that pushes it out, what that does to the bush, and how far heat on the housing or cold on the bush lets go of it.',
  group: 'fits',
  inputs: [
    { name: 'outside', label: 'outside of the bush', quantity: 'length', sensible: ['5 mm', '1 m'] },
    { name: 'bush_bore', label: 'bore of the bush', quantity: 'length', sensible: ['3 mm', '1 m'] },
    {
      name: 'interference',
      label: 'interference, on diameter',
      quantity: 'length',
      sensible: ['0 um', '0.5 mm'],
      hint: '= bush_outside - housing. 0 of a slip fit held by a compound.',
    },
    {
      name: 'grip_force',
      label: 'force the press fit holds',
      quantity: 'force',
      optional: true,
      sensible: ['10 N', '2000 kN'],
      hint: 'As it went in, by the gauge of the press or by its cell.',
    },
    {
      name: 'bond_force',
      label: 'force the compound holds, cold',
      quantity: 'force',
      optional: true,
      sensible: ['10 N', '2000 kN'],
      hint: '= bond.bond_force',
    },
    {
      name: 'breakaway',
      label: 'force to start it, over what held it',
      quantity: 'number',
      default: '1.5 ± 0.5',
      sensible: ['1', '4'],
      source: 'common practice, no source: rust, dirt and time; years in water take more',
    },
    {
      name: 'bond_left_hot',
      label: 'share of the compound left when heated to come apart',
      quantity: 'number',
      default: '0.15 ± 0.15',
      sensible: ['0', '1'],
      source: 'common practice, no source: about 250 degC for some minutes; its sheet comes first',
    },
    {
      name: 'press_capacity',
      label: 'force of the press or puller',
      quantity: 'force',
      optional: true,
      sensible: ['100 N', '5000 kN'],
    },
    { name: 'bush_material', label: 'material of the bush', record: 'material' },
    { name: 'housing_material', label: 'material of the housing', record: 'material' },
    coldTemperature,
    {
      name: 'hottest',
      label: 'hottest the housing may become',
      quantity: 'temperature',
      default: '=housing_material.max_temperature',
      sensible: ['60 degC', '600 degC'],
      source: 'the material; paint, seals, a lining or a joint nearby bear less',
    },
    {
      name: 'chilled_to',
      label: 'bush chilled to',
      quantity: 'temperature',
      optional: true,
      sensible: ['-196 degC', '10 degC'],
      hint: 'Dry ice in spirit about -75 degC. The housing stays as it is.',
    },
  ],
  outputs: [
    {
      name: 'push_out',
      label: 'force to push it out, cold',
      quantity: 'force',
      formula:
        '=breakaway * (IF(ISBLANK(grip_force); 0 N; grip_force) + IF(ISBLANK(bond_force); 0 N; bond_force))',
      basis: 'model',
      face: true,
      limits: { upper: '=press_capacity' },
      hint: 'Pin, screw and snap ring are out first.',
    },
    {
      name: 'end_stress',
      label: 'pressure on the end of the bush, cold',
      quantity: 'pressure',
      formula: '=push_out / (PI() / 4 * (outside ^ 2 - bush_bore ^ 2))',
      basis: 'model',
      limits: { upper: '=bush_material.yield' },
      hint: 'Above its strength the bush swells under the drift and holds harder: heat it, or bore it out.',
    },
    {
      name: 'push_out_hot',
      label: 'force once heat has softened the compound',
      quantity: 'force',
      formula:
        '=breakaway * (IF(ISBLANK(grip_force); 0 N; grip_force) + IF(ISBLANK(bond_force); 0 N; bond_force) * bond_left_hot)',
      basis: 'model',
      limits: { upper: '=press_capacity' },
    },
    {
      name: 'rise_wanted',
      label: 'housing warmer than the bush by, to let go',
      quantity: 'temperature difference',
      formula: '=MAX(interference; 0 m) / (outside * housing_material.alpha)',
      basis: 'model',
      face: true,
      hint: 'Bush still cold: heat quickly, or with a cold drift in it.',
    },
    {
      name: 'loosens_at',
      label: 'housing lets go at',
      quantity: 'temperature',
      formula: '=cold_temperature + rise_wanted',
      basis: 'model',
      face: true,
      limits: { upper: '=hottest' },
    },
    {
      name: 'per_degree_together',
      label: 'grip lost for each degree when both warm together',
      quantity: 'expansion coefficient',
      formula: '=housing_material.alpha - bush_material.alpha',
      basis: 'model',
      hint: 'Below zero it grips harder as both warm: bronze or light alloy in iron. Heat then only if the bush stays cold.',
    },
    {
      name: 'left_when_chilled',
      label: 'interference left when the bush is chilled',
      quantity: 'length',
      formula: '=interference - outside * bush_material.alpha * (cold_temperature - chilled_to)',
      basis: 'model',
      display: { in: 'thou', mm: 'um' },
      limits: { upper: '=0 m' },
      hint: 'Below zero it drops out.',
    },
    {
      name: 'thin_to',
      label: 'or bore it out to, a shell of a thirtieth left',
      quantity: 'length',
      formula: '=MAX(bush_bore; outside * 14 / 15)',
      basis: 'model',
      face: true,
      hint: 'A thirtieth of its diameter each side, or as thin as it is already: then it folds inward with a chisel along it, and the housing is not touched.',
    },
  ],
  validity: [
    {
      holds: '=AND(outside > 0 m; bush_bore > 0 m; bush_bore < outside)',
      otherwise: 'All sizes are above zero, and the bore smaller than the outside.',
      grade: 'error',
    },
    {
      holds:
        '=AND(IF(ISBLANK(grip_force); 1 > 0; grip_force >= 0 N); IF(ISBLANK(bond_force); 1 > 0; bond_force >= 0 N))',
      otherwise: 'A force is counted without a sign.',
      grade: 'error',
    },
    { holds: '=breakaway >= 1', otherwise: 'It takes at least what held it.', grade: 'error' },
    {
      holds: '=AND(bond_left_hot >= 0; bond_left_hot <= 1)',
      otherwise: 'A share lies from 0 to 1.',
      grade: 'error',
    },
    {
      holds: '=IF(ISBLANK(chilled_to); 1 > 0; chilled_to < cold_temperature)',
      otherwise: 'Chilled is colder than the sizes were read at.',
      grade: 'error',
    },
    {
      holds: '=NOT(AND(ISBLANK(grip_force); ISBLANK(bond_force)))',
      otherwise: 'Nothing is entered that holds it: the force comes out as nothing.',
      grade: 'caution',
    },
  ],
  assumptions: [
    'First out: the pin or screw, by its thread, drawn, or drilled out; then snap rings, and burrs and corrosion at the end it leaves by.',
    'Pushed square on its whole end with a stepped drift just under the housing; a blind one is drawn, or pushed out by grease and a plug that fits.',
    'A heated housing grows as a solid piece of its metal would, the bush in it still cold.',
  ],
  sources: [
    'Linear expansion: any handbook; forces by a second method of our own',
    'Breakaway, softened compound, shell left: common practice, no source',
  ],
  cautions: [
    pressGuard,
    pressStop,
    'Hot parts: gloves, goggles, no flame near oil, grease or solvent. A closed hollow, or oil under a plug, bursts: open and drain it first.',
    {
      text: 'Compound heated to let go gives off fumes: ventilate, and keep to its safety sheet.',
      given: ['bond_force'],
    },
    {
      text: 'Dry ice and spirit: frostbite, fire, and gas that drives out the air. Ventilate, gloves that slip off, a face shield, no flame.',
      given: ['chilled_to'],
    },
    'A bush that lets go at a leap throws the drift: keep it caged, and something soft under it.',
    fitEdge,
    oldParts,
    licensed,
  ],
  examples: [
    {
      title: 'Bush 50 x 40 mm, 0.04 mm in iron, 8 kN of press and 12 kN of compound',
      source:
        'by hand: 1.5 x 20 = 30 kN; hot 1.5 x (8 + 0.15 x 12) = 14.7 kN; end pi/4 (50^2 - 40^2) = 706.86 mm2, 42.44 MPa; 0.04 / (50 x 12e-6) = 66.67 K',
      grade: 'recomputed',
      inputs: {
        outside: '50 mm',
        bush_bore: '40 mm',
        interference: '0.04 mm',
        grip_force: '8 kN',
        bond_force: '12 kN',
        breakaway: '1.5',
        bond_left_hot: '0.15',
        press_capacity: '50 kN',
        bush_material: { alpha: '18e-6 1/K', yield: '120 MPa' },
        housing_material: { alpha: '12e-6 1/K', max_temperature: '400 degC' },
        chilled_to: '-75 degC',
      },
      expect: {
        push_out: { value: '30 kN', within: 1e-9 },
        push_out_hot: { value: '14.7 kN', within: 1e-9 },
        end_stress: { value: '42.441 MPa', within: 1e-4 },
        rise_wanted: { value: '66.6667 K', within: 1e-5 },
        loosens_at: { value: '86.6667 degC', within: '0.001 K' },
        left_when_chilled: { value: '-45.5 um', within: '0.001 um' },
        thin_to: { value: '46.6667 mm', within: 1e-5 },
      },
    },
    {
      title: 'Bush of 50 mm bored to 47.5 mm already: no metal to bore away',
      source: 'by hand: 50 x 14 / 15 = 46.667 mm is less than its bore',
      grade: 'recomputed',
      inputs: {
        outside: '50 mm',
        bush_bore: '47.5 mm',
        interference: '0.03 mm',
        grip_force: '4 kN',
        breakaway: '1.5',
        bush_material: { alpha: '18e-6 1/K', yield: '120 MPa' },
        housing_material: { alpha: '12e-6 1/K', max_temperature: '400 degC' },
      },
      expect: { thin_to: { value: '47.5 mm', within: 1e-9 } },
    },
    {
      title: 'Slip fit held by compound alone',
      source: 'by hand: 1.5 x 12 kN; no interference, so no heat to let go',
      grade: 'recomputed',
      inputs: {
        outside: '50 mm',
        bush_bore: '40 mm',
        interference: '0 mm',
        bond_force: '12 kN',
        breakaway: '1.5',
        bush_material: { alpha: '18e-6 1/K', yield: '120 MPa' },
        housing_material: { alpha: '12e-6 1/K', max_temperature: '400 degC' },
      },
      expect: { push_out: { value: '18 kN', within: 1e-9 }, rise_wanted: { value: '0 K', within: '1e-9 K' } },
    },
    {
      title: 'C93200 bush of 50 mm in gray iron: heat tightens it',
      source:
        'differential expansion: 18.0 less 11.4 of a millionth per K, 0.0231 mm tighter on 50 mm over 70 K; 0.0399 mm gone by heat on the housing alone over the same 70 K',
      grade: 'computed',
      inputs: {
        outside: '50 mm',
        bush_bore: '44 mm',
        interference: '0.0399 mm',
        grip_force: '8 kN',
        breakaway: '1.5',
        bush_material: { alpha: '18.0e-6 1/K', yield: '125 MPa' },
        housing_material: { alpha: '11.4e-6 1/K', max_temperature: '400 degC' },
      },
      expect: {
        per_degree_together: { value: '-6.6e-6 1/K', within: 1e-6 },
        rise_wanted: { value: '70 K', within: 1e-9 },
      },
    },
  ],
  drawing: ({ outside, bush_bore: bore, thin_to: thin }) => {
    if (outside === undefined || bore === undefined || thin === undefined) return undefined;
    if (!(bore > 0 && outside > bore && thin > 0 && thin < outside) || !Number.isFinite(outside))
      return undefined;
    const [x, y, r] = [150, 112, 70];
    const shell = (r * thin) / outside;
    return {
      width: 300,
      height: 226,
      shapes: [
        annulus(x, y, r + 26, r, 'section-b'),
        annulus(x, y, r, (r * bore) / outside, 'section-a'),
        { kind: 'circle', x, y, r: shell, fill: 'none' },
        { kind: 'line', x1: x, y1: 8, x2: x, y2: 216, style: 'centre' },
        { kind: 'line', x1: 40, y1: y, x2: 260, y2: y, style: 'centre' },
        { kind: 'dimension', x1: x, y1: y - shell, x2: x, y2: y + shell, offset: -122, of: 'thin_to' },
        { kind: 'dimension', x1: x, y1: y - r, x2: x, y2: y + r, offset: 124, of: 'outside' },
      ],
    };
  },
});
