import type { Property } from './table.ts';
import { fromMemory, mm, property } from './table.ts';

/**
 * Anaerobic retaining compounds by strength, for want of the maker's sheet, which comes first: grade, surface, activator,
 * gap and cure move these figures by half.
 */
export interface RetainingCompound {
  key: string;
  name: string;
  /** Shear strength cured, steel on steel at 22 degC, Pa. */
  shear: Property;
  /** Largest gap on diameter it fills, m. */
  gap: Property;
  /** Share of the strength left at 100 degC. */
  keptAt100C: Property;
  /** Share of the steel strength on aluminium or stainless. */
  onLightOrStainless: Property;
  note?: string;
}

const sheets = fromMemory("makers' data sheets at large");
const share = (value: number, low: number, high: number): Property => property(1, value, [low, high], sheets);
const shear = (value: number, low: number, high: number): Property =>
  property(1e6, value, [low, high], sheets);
const gap = (value: number, low: number, high: number): Property =>
  property(mm(1), value, [low, high], sheets);

export const retainingCompounds: readonly RetainingCompound[] = [
  {
    key: 'low-strength',
    name: 'Retaining compound, low strength (comes apart by hand tools)',
    shear: shear(8, 4, 12),
    gap: gap(0.12, 0.1, 0.15),
    keptAt100C: share(0.6, 0.4, 0.8),
    onLightOrStainless: share(0.6, 0.3, 0.8),
  },
  {
    key: 'medium-strength',
    name: 'Retaining compound, medium strength',
    shear: shear(15, 10, 20),
    gap: gap(0.15, 0.1, 0.2),
    keptAt100C: share(0.7, 0.5, 0.9),
    onLightOrStainless: share(0.6, 0.3, 0.8),
  },
  {
    key: 'high-strength',
    name: 'Retaining compound, high strength',
    shear: shear(22, 15, 30),
    gap: gap(0.15, 0.1, 0.25),
    keptAt100C: share(0.7, 0.5, 0.9),
    onLightOrStainless: share(0.6, 0.3, 0.8),
    note: 'Comes apart only with heat, about 250 degC: hot parts, fume.',
  },
  {
    key: 'high-temperature',
    name: 'Retaining compound, high temperature',
    shear: shear(25, 15, 30),
    gap: gap(0.15, 0.1, 0.25),
    keptAt100C: share(0.85, 0.7, 0.95),
    onLightOrStainless: share(0.6, 0.3, 0.8),
    note: 'Comes apart only with heat, about 250 degC: hot parts, fume.',
  },
  {
    key: 'gap-filling',
    name: 'Retaining paste for worn parts',
    shear: shear(18, 10, 25),
    gap: gap(0.5, 0.4, 0.5),
    keptAt100C: share(0.7, 0.5, 0.9),
    onLightOrStainless: share(0.6, 0.3, 0.8),
    note: 'Cures slowly in a wide gap; an activator costs strength.',
  },
];

export const retainingCompoundTable = {
  title: 'Retaining compounds',
  rows: retainingCompounds.map(
    ({ key, name, shear: strength, gap: widest, keptAt100C, onLightOrStainless, note }) => ({
      key,
      name,
      columns: { shear: strength, gap: widest, keptAt100C, onLightOrStainless },
      ...(note === undefined ? {} : { note }),
    }),
  ),
};
