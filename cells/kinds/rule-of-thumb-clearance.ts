import { journalInBush } from '../drawings/journal.ts';
import { defineCell } from '../record/cell.ts';
import { powerOff } from '../record/hazards.ts';

export default defineCell({
  key: 'rule-of-thumb-clearance',
  edition: 1,
  title: 'Clearance by rule of thumb',
  purpose: 'What the usual shop rules give for a journal, each by name, where the maker gives no figure.',
  group: 'clearance',
  inputs: [
    { name: 'journal', label: 'journal diameter', quantity: 'length', sensible: ['5 mm', '500 mm'] },
    {
      name: 'turning_speed',
      label: 'turning speed',
      quantity: 'rotational speed',
      optional: true,
      sensible: ['1 rpm', '30000 rpm'],
      hint: 'For the rule by speed.',
    },
    {
      name: 'bearing_metal',
      label: 'metal of the bearing',
      choice: 'clearance-metals',
      optional: true,
      hint: 'The rules are for bronze and babbitt; light alloy wants about twice as much. No rule here is for plastic.',
    },
  ],
  outputs: [
    {
      name: 'thou_and_thou',
      label: 'rule: 1 thou, and 1 thou an inch',
      quantity: 'length',
      basis: 'model',
      formula: '=0.001 in + 0.001 * journal',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'thou_and_half',
      label: 'rule: 1 1/2 thou an inch',
      quantity: 'length',
      basis: 'model',
      formula: '=0.0015 * journal',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'two_thou',
      label: 'rule: 2 thou an inch',
      quantity: 'length',
      basis: 'model',
      formula: '=0.002 * journal',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'close_bush',
      label: 'rule: ISO 4379 bush, shaft g7, in the middle of its limits',
      quantity: 'length',
      basis: 'model',
      formula:
        '=(LOWERDEVIATION(journal; "H8") + UPPERDEVIATION(journal; "H8") - LOWERDEVIATION(journal; "g7") - UPPERDEVIATION(journal; "g7")) / 2',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'easy_bush',
      label: 'rule: ISO 4379 bush, shaft e7, in the middle of its limits',
      quantity: 'length',
      basis: 'model',
      formula:
        '=(LOWERDEVIATION(journal; "H8") + UPPERDEVIATION(journal; "H8") - LOWERDEVIATION(journal; "e7") - UPPERDEVIATION(journal; "e7")) / 2',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'surface_speed',
      label: 'surface speed',
      quantity: 'speed',
      basis: 'model',
      formula: '=PI() * journal * turning_speed',
    },
    {
      name: 'by_speed',
      label: 'rule by speed: 0.8 thousandths of the diameter, times the fourth root of the speed in m/s',
      quantity: 'length',
      basis: 'model',
      formula: '=0.0008 * journal * (surface_speed / (1 m/s))^0.25',
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'metal_times',
      label: 'clearance of this metal over that of bronze',
      quantity: 'number',
      basis: 'model',
      table: { choice: 'bearing_metal', column: 'times' },
    },
    {
      name: 'least_for_metal',
      label: 'least of the rules, for this metal',
      quantity: 'length',
      basis: 'model',
      formula: '=least_of_rules * metal_times',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'greatest_for_metal',
      label: 'greatest of the rules, for this metal',
      quantity: 'length',
      basis: 'model',
      formula: '=greatest_of_rules * metal_times',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'least_of_rules',
      label: 'least of the rules, bronze or babbitt',
      quantity: 'length',
      basis: 'model',
      formula:
        '=MIN(thou_and_thou; thou_and_half; two_thou; close_bush; easy_bush; IF(ISBLANK(turning_speed); two_thou; by_speed))',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
    {
      name: 'greatest_of_rules',
      label: 'greatest of the rules, bronze or babbitt',
      quantity: 'length',
      basis: 'model',
      formula:
        '=MAX(thou_and_thou; thou_and_half; two_thou; close_bush; easy_bush; IF(ISBLANK(turning_speed); two_thou; by_speed))',
      face: true,
      display: { in: 'thou', mm: 'um' },
    },
  ],
  validity: [
    {
      holds: '=AND(journal > 0 m; journal <= 0.5 m)',
      otherwise: 'These rules are for journals up to 500 mm.',
      grade: 'error',
    },
    {
      holds: '=NOT(ISBLANK(bearing_metal))',
      otherwise:
        'These rules are for bronze and babbitt: name the metal of the bearing. A light alloy takes about twice as much, and seizes on less.',
      grade: 'caution',
    },
    {
      holds: '=greatest_of_rules <= 2 * least_of_rules',
      otherwise:
        'The rules differ by more than two: they cannot all be right. Slow, loaded and well greased goes to the least; fast, hot or out of line to the greatest.',
      grade: 'caution',
    },
    {
      holds: '=IF(ISBLANK(turning_speed); 1 > 0; turning_speed >= 0 rpm)',
      otherwise: 'A turning speed is counted without a sign.',
      grade: 'error',
    },
  ],
  assumptions: [
    "Rules of thumb stand back behind the maker's figure and behind what the machine ran with when new.",
    'Cold, on diameter, metal bush in oil. Plastic bushes need more and their maker says how much.',
  ],
  sources: [
    'The three rules an inch: a trade article that lists competing shop rules',
    'ISO 4379:1993 and 2018 (from memory): bush bore about H8 when pressed in, shaft e7 or g7; limits by ISO 286-1:2010',
    'By metal: Tribology Handbook (Neale, 2e), least clearance of crankshaft bearings (from memory): white metal 0.0005, copper-lead 0.00075, aluminium 0.001 of the diameter',
    'By speed: DIN 31652-3, after Vogelpohl (from memory)',
  ],
  cautions: [
    'A clearance too small seizes: turn the shaft by hand through a full turn, cold, before power, with guards in place.',
    powerOff,
  ],
  examples: [
    {
      title: 'A 2.000 in journal',
      source: 'trade article listing competing shop rules',
      grade: 'seen',
      inputs: { journal: '2.000 in' },
      expect: {
        thou_and_thou: { value: '0.003 in', within: 1e-9 },
        thou_and_half: { value: '0.003 in', within: 1e-9 },
        two_thou: { value: '0.004 in', within: 1e-9 },
      },
    },
    {
      title: 'A 2.000 in journal in light alloy: twice the rules',
      source:
        'Tribology Handbook (Neale, 2e), crankshaft bearings: aluminium 0.001, white metal 0.0005 of the diameter; on the rules an inch of the trade article',
      grade: 'memory',
      inputs: { journal: '2.000 in', bearing_metal: 'light-alloy' },
      expect: { metal_times: { value: '2', within: 1e-9 } },
    },
    {
      title: 'Rule by speed at 5 m/s: 1.196 thousandths',
      source: 'DIN 31652-3, after Vogelpohl',
      grade: 'memory',
      inputs: { journal: '100 mm', turning_speed: '954.92966 rpm' },
      expect: { by_speed: { value: '0.1196 mm', within: 1e-3 } },
    },
  ],
  drawing: (v) =>
    journalInBush({ journal: v.journal, clearance: v.thou_and_half, names: { journal: 'journal' } }),
});
