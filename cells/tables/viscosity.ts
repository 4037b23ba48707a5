import type { Origin, Property, TableProblem } from './table.ts';
import { celsius, fromMemory, property } from './table.ts';

/**
 * Oils by grade: kinematic viscosity at 40 and at 100 degC (m2/s) and density at 15 degC. ISO 3448 fixes VG at 40 degC,
 * +-10 % about the number; SAE J300 and J306 fix the grade at 100 degC. The other figure is that of a common mineral oil
 * of viscosity index about 95, and spreads with the oil.
 */
export interface Oil {
  key: string;
  name: string;
  at40: Property;
  at100: Property;
  /** kg/m3 */
  density: Property;
}

const iso = fromMemory('ISO 3448:1992; viscosity at 100 degC of a mineral oil of index about 95');
const sae = fromMemory('SAE J300; viscosity at 40 degC of a mineral oil of index about 95');
const gear = fromMemory('SAE J306; viscosity at 40 degC of a mineral oil of index about 95');

/** mm2/s */
const cSt = (value: number, low: number, high: number, origin: Origin): Property =>
  property(1e-6, value, [low, high], origin);
const weight = (value: number, origin: Origin): Property =>
  property(1, value, [value - 20, value + 20], origin);

const vg = (number: number, at100: number, density: number): Oil => ({
  key: `vg-${number}`,
  name: `ISO VG ${number}`,
  at40: cSt(number, number * 0.9, number * 1.1, iso),
  at100: cSt(at100, at100 * 0.9, at100 * 1.12, iso),
  density: weight(density, iso),
});

const grade = (
  key: string,
  name: string,
  at40: number,
  [value, low, high]: readonly [number, number, number],
  density: number,
  origin: Origin,
): Oil => ({
  key,
  name,
  at40: cSt(at40, at40 * 0.8, at40 * 1.2, origin),
  at100: cSt(value, low, high, origin),
  density: weight(density, origin),
});

export const oils: readonly Oil[] = [
  vg(10, 2.5, 850),
  vg(15, 3.3, 855),
  vg(22, 4.2, 860),
  vg(32, 5.4, 868),
  vg(46, 6.8, 875),
  vg(68, 8.7, 880),
  vg(100, 11.3, 885),
  vg(150, 14.9, 890),
  vg(220, 19.2, 893),
  vg(320, 24.7, 897),
  vg(460, 31.3, 900),
  vg(680, 40, 905),
  vg(1000, 52, 910),
  grade('sae-10w', 'SAE 10W engine oil', 32, [5.4, 4.1, 6.9], 870, sae),
  grade('sae-20', 'SAE 20 engine oil', 62, [8.1, 6.9, 9.3], 880, sae),
  grade('sae-30', 'SAE 30 engine oil', 96, [10.9, 9.3, 12.5], 885, sae),
  grade('sae-40', 'SAE 40 engine oil', 143, [14.4, 12.5, 16.3], 890, sae),
  grade('sae-50', 'SAE 50 engine oil', 220, [19.1, 16.3, 21.9], 895, sae),
  grade('sae-60', 'SAE 60 engine oil', 310, [24, 21.9, 26.1], 898, sae),
  grade('sae-80-gear', 'SAE 80 gear oil', 75, [9.2, 7, 11], 885, gear),
  grade('sae-90-gear', 'SAE 90 gear oil', 175, [16, 13.5, 18.5], 895, gear),
  grade('sae-140-gear', 'SAE 140 gear oil', 400, [28, 24, 32.5], 905, gear),
  grade('sae-250-gear', 'SAE 250 gear oil', 750, [43, 41, 60], 915, gear),
];

export const oilByKey = (key: string): Oil | undefined => oils.find((oil) => oil.key === key);

/**
 * Kinematic viscosity (m2/s) at a temperature (K) through two known points, by Walther's line: lg lg (v + 0.7) over lg T,
 * v in mm2/s (ASTM D341, DIN 51563). Holds from 2 mm2/s up, for plain oils, between about 0 and 150 degC.
 */
export const kinematicViscosity = (
  at40: number,
  at100: number,
  temperature: number,
): number | TableProblem => {
  if (!(at40 > at100 && at100 > 1.5e-6))
    return {
      problem:
        'The oil is thinner at 40 degC than at 100 degC, or thinner than 1.5 mm2/s: check the two figures.',
    };
  if (!(temperature >= celsius(-20) && temperature <= celsius(160)))
    return {
      problem: `${(temperature - 273.15).toFixed(0)} degC is outside -20 to 160 degC, where the line through the two viscosities holds.`,
    };
  const line = (v: number): number => Math.log10(Math.log10(v * 1e6 + 0.7));
  const x = (T: number): number => Math.log10(T);
  const slope = (line(at40) - line(at100)) / (x(celsius(100)) - x(celsius(40)));
  return (10 ** (10 ** (line(at40) - slope * (x(temperature) - x(celsius(40))))) - 0.7) * 1e-6;
};

/** Dynamic viscosity (Pa s) of an oil at a temperature (K); density falls by 0.00065 a kelvin from 15 degC. */
export const dynamicViscosity = (
  oil: { at40: number; at100: number; density: number },
  temperature: number,
): number | TableProblem => {
  const kinematic = kinematicViscosity(oil.at40, oil.at100, temperature);
  return typeof kinematic === 'number'
    ? kinematic * oil.density * (1 - 0.00065 * (temperature - celsius(15)))
    : kinematic;
};

export const oilTable = {
  title: 'Oils',
  rows: oils.map(({ key, name, at40, at100, density }) => ({ key, name, columns: { at40, at100, density } })),
};
