import type { Material } from './material.ts';
import { degC, from, gpa, kgm3, mpa, perMillionK, ratio, saying, wmk } from './material.ts';

const fume =
  'Melting and scraping give lead dust and fume; keep pots below the pouring temperature of the maker and follow local lead rules.';

export const bearingMetals: readonly Material[] = [
  {
    key: 'tin-babbitt',
    name: 'Tin babbitt, ASTM B23 grade 2',
    kind: 'babbitt',
    aliases: [
      'tin-base babbitt',
      'ASTM B23 grade 2',
      'tin babbitt ASTM B23 gr 2',
      'tin white metal',
      'SAE 12',
    ],
    E: gpa(52, [39, 58], from.asm, [0, 60]),
    nu: ratio(0.36, [0.33, 0.4], from.asm),
    alpha: perMillionK(22.5, [20.9, 24.1], saying(from.asm, '21 to 24; pure tin 23.8 in Callister B.6')),
    yield: mpa(42, [35, 49], saying(from.asm, 'at 20 degC; about half at 100 degC'), [20, 20]),
    tensile: mpa(77, [60, 103], from.asm, [20, 20]),
    density: kgm3(7390, [7300, 7460], from.asm),
    conductivity: wmk(55, [45, 63], from.asm),
    maxTemperature: degC(150, [110, 150], saying(from.carvill, 'strength goes long before')),
    note: 'Usually a lining: the shell behind it sets the stiffness of the wall.',
  },
  {
    key: 'lead-babbitt',
    name: 'Lead babbitt, ASTM B23 grade 13',
    kind: 'babbitt',
    aliases: [
      'lead-base babbitt',
      'ASTM B23 grade 13',
      'lead babbitt ASTM B23 gr 13',
      'lead white metal',
      'SAE 14',
    ],
    E: gpa(29, [22, 36], from.asm, [0, 60]),
    nu: ratio(0.4, [0.36, 0.44], from.asm),
    alpha: perMillionK(26, [23.9, 28.1], saying(from.asm, '24 to 28; antimonial lead 27.2 in Callister B.6')),
    yield: mpa(23, [19, 27], saying(from.asm, 'at 20 degC; about half at 100 degC'), [20, 20]),
    tensile: mpa(69, [55, 75], from.asm, [20, 20]),
    density: kgm3(10000, [9600, 10300], from.asm),
    conductivity: wmk(24, [20, 28], from.asm),
    maxTemperature: degC(
      150,
      [110, 150],
      saying(from.carvill, 'followed; 130 degC from memory; strength goes long before'),
    ),
    leaded: true,
    note: `Usually a lining: the shell behind it sets the stiffness of the wall. ${fume}`,
  },
];
