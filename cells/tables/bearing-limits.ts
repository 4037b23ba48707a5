import type { Origin, Property } from './table.ts';
import { celsius, fromMemory, property, seen } from './table.ts';

/**
 * What plain bearing materials stand, each limit by itself: pressure p on the projected area (load / (bore x length)),
 * surface speed v, their product pV in boundary lubrication, and temperature. Guide values; sources differ, for nylon by
 * a factor of eight. The printed figure is followed and the range takes in the others. Maker's data for the very grade
 * come first.
 */
export interface BearingLimit {
  key: string;
  name: string;
  /** Pa; low to high as printed, the value being the lower figure where a range is printed. */
  p?: Property;
  /** m/s */
  v?: Property;
  /** Pa m/s */
  pv?: Property;
  /** K */
  temperature?: Property;
  note?: string;
}

const mott = seen('Mott, Machine Elements in Mechanical Design, Table 16-1');
const carvill = seen("Carvill, Mechanical Engineer's Data Handbook (1993), sec. 2.9.3 p. 92");
const neale = seen('Tribology Handbook (Neale, 2e), A5.1; static load');
const porous = fromMemory('MPIF 35 / SAE J328 practice; Shigley Table 12-8');
const porousPv = seen(
  'Mott, Machine Elements in Mechanical Design, Table 16-1: 50 000 psi ft/min, oiled as it runs; with its first oil alone 20 000, from memory of suppliers\u2019 guides',
);
const mottRemembered = fromMemory('Mott, Machine Elements in Mechanical Design, Table 16-1');
const boundary = fromMemory(
  'Shigley Table 12-8, some materials for boundary-lubricated bearings; suppliers lower',
);
const remembered = fromMemory('bearing handbooks; order of magnitude');

type Range = readonly [number, number];
const psi = 6894.757293168;
const fpm = 0.00508;
const mega = (value: number, range: Range, origin: Origin): Property => property(1e6, value, range, origin);
/** psi.ft/min */
const psiFpm = (value: number, range: Range, origin: Origin): Property =>
  property(psi * fpm, value, range, origin);
const speed = (value: number, range: Range, origin: Origin): Property => property(1, value, range, origin);
const degC = (value: number, range: Range, origin: Origin): Property =>
  property(1, celsius(value), [celsius(range[0]), celsius(range[1])], origin);

export const bearingLimits: readonly BearingLimit[] = [
  {
    key: 'tin-babbitt',
    name: 'Tin babbitt',
    p: mega(5.5, [5.5, 10.3], carvill),
    pv: psiFpm(30000, [18000, 30000], mottRemembered),
    temperature: degC(150, [110, 150], carvill),
  },
  {
    key: 'lead-babbitt',
    name: 'Lead babbitt (low tin, 10 %)',
    p: mega(5.5, [5.5, 8], carvill),
    pv: psiFpm(18000, [15000, 18000], mott),
    temperature: degC(150, [110, 150], carvill),
  },
  {
    key: 'copper-lead',
    name: 'Copper-lead lining',
    p: mega(10.3, [10.3, 18], remembered),
    temperature: degC(175, [160, 177], remembered),
  },
  {
    key: 'c93200',
    name: 'Bearing bronze C93200 (SAE 660)',
    p: mega(20, [17, 28], remembered),
    v: speed(3.8, [2.5, 5.1], remembered),
    pv: psiFpm(75000, [50000, 75000], mottRemembered),
    temperature: degC(230, [160, 260], remembered),
  },
  {
    key: 'tin-bronze',
    name: 'Tin bronze',
    p: mega(28, [20, 35], remembered),
    pv: psiFpm(75000, [50000, 100000], remembered),
    temperature: degC(260, [200, 260], carvill),
    note: 'Wants a hardened journal at high load.',
  },
  {
    key: 'c95400',
    name: 'Aluminium bronze C95400',
    p: mega(31, [28, 45], remembered),
    v: speed(1.3, [1, 2.5], remembered),
    pv: psiFpm(125000, [80000, 125000], mott),
    temperature: degC(260, [230, 320], remembered),
    note: 'Wants a hardened journal.',
  },
  {
    key: 'c86200',
    name: 'Manganese bronze C86200',
    p: mega(40, [28, 55], remembered),
    v: speed(1.3, [1, 2.5], remembered),
    pv: psiFpm(150000, [100000, 150000], mott),
    temperature: degC(150, [120, 200], remembered),
    note: 'Wants a hardened journal.',
  },
  {
    key: 'porous-bronze',
    name: 'Porous bronze, oil impregnated',
    p: property(psi, 2000, [2000, 4500], porous),
    v: property(fpm, 1200, [1000, 1500], porous),
    pv: psiFpm(50000, [20000, 50000], porousPv),
    temperature: degC(80, [65, 90], remembered),
  },
  {
    key: 'cast-iron',
    name: 'Gray cast iron',
    p: mega(4, [3, 7], remembered),
    v: speed(1, [0.7, 4], remembered),
    pv: psiFpm(30000, [20000, 50000], remembered),
    temperature: degC(200, [150, 260], remembered),
  },
  {
    key: 'aluminium-bearing',
    name: 'Aluminium bearing alloy',
    p: mega(28, [20, 35], remembered),
    temperature: degC(120, [105, 150], remembered),
    note: 'Wants a hardened journal.',
  },
  {
    key: 'bronze-ptfe-lead',
    name: 'Porous bronze with PTFE and lead lining, dry',
    p: mega(350, [140, 350], neale),
    v: speed(2.5, [2, 5], remembered),
    pv: psiFpm(51000, [28000, 51000], mottRemembered),
    temperature: degC(275, [250, 280], neale),
    note: 'The pressure is the static limit; running, far less: maker\u2019s data.',
  },
  {
    key: 'nylon',
    name: 'Nylon',
    p: mega(7, [6.9, 14], carvill),
    v: speed(2.5, [1.8, 5.1], carvill),
    pv: property(1e6, 0.875, [0.105, 0.875], carvill),
    temperature: degC(95, [80, 120], carvill),
    note: 'Printed pV limits differ by a factor of eight: 3000 psi ft/min is the other end, dry.',
  },
  {
    key: 'acetal',
    name: 'Acetal',
    p: mega(7, [6.9, 14], remembered),
    v: speed(3, [2.5, 5.1], remembered),
    pv: psiFpm(3000, [2700, 4000], remembered),
    temperature: degC(82, [80, 100], remembered),
    note: 'pV for running dry.',
  },
  {
    key: 'ptfe',
    name: 'PTFE, unfilled',
    p: mega(3.5, [3.4, 3.5], carvill),
    v: speed(1.2, [0.25, 1.3], carvill),
    pv: property(1e6, 0.35, [0.035, 0.35], carvill),
    temperature: degC(265, [250, 265], carvill),
    note: 'Dry and unbacked it stands a tenth of the printed pV.',
  },
  {
    key: 'filled-ptfe',
    name: 'Filled PTFE',
    p: mega(2, [2, 7], neale),
    v: speed(5, [2.5, 5.1], remembered),
    pv: psiFpm(7500, [7500, 10000], mott),
    temperature: degC(250, [230, 260], neale),
  },
  {
    key: 'phenolic',
    name: 'Phenolic laminate, water or oil lubricated',
    p: property(psi, 4000, [2500, 6000], boundary),
    v: property(fpm, 2500, [2000, 2500], boundary),
    pv: psiFpm(15000, [5000, 15000], boundary),
    temperature: degC(93, [80, 120], boundary),
    note: 'A poor conductor: without water or oil to carry the heat off it chars. Dust of some old grades holds asbestos: have it looked at before cutting.',
  },
  {
    key: 'carbon-graphite',
    name: 'Carbon graphite',
    p: mega(4, [2.8, 4.1], remembered),
    v: speed(13, [10, 13], remembered),
    pv: psiFpm(15000, [15000, 15000], mottRemembered),
    temperature: degC(350, [260, 400], remembered),
  },
  {
    key: 'rubber-water',
    name: 'Rubber, water lubricated',
    p: mega(0.35, [0.24, 0.4], remembered),
    v: speed(5, [1, 20], remembered),
    pv: psiFpm(15000, [15000, 15000], remembered),
    temperature: degC(65, [50, 75], remembered),
  },
  {
    key: 'wood',
    name: 'Lignum vitae or maple, water or oil lubricated',
    p: mega(10, [6.9, 14], remembered),
    v: speed(5, [2.5, 10], remembered),
    pv: psiFpm(15000, [12000, 15000], remembered),
    temperature: degC(65, [60, 70], remembered),
  },
];

export const bearingLimitByKey = (key: string): BearingLimit | undefined =>
  bearingLimits.find((row) => row.key === key);

export const bearingLimitTable = {
  title: 'Plain bearing material limits',
  rows: bearingLimits.map(({ key, name, p, v, pv, temperature, note }) => ({
    key,
    name,
    columns: { p, v, pv, temperature },
    ...(note === undefined ? {} : { note }),
  })),
};
