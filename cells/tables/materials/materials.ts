import type { Property } from '../table.ts';
import { bearingMetals } from './bearing-metals.ts';
import { coppers } from './coppers.ts';
import { irons } from './irons.ts';
import { lightAlloys } from './light-alloys.ts';
import type { Material } from './material.ts';
import { plastics } from './plastics.ts';
import { steels } from './steels.ts';

export type { Material } from './material.ts';

/** Every shop material of the handbook, by family. */
export const materials: readonly Material[] = [
  ...irons,
  ...steels,
  ...coppers,
  ...bearingMetals,
  ...lightAlloys,
  ...plastics,
];

/** Case, spaces and hyphens do not tell two materials apart: `SAE-660` is `sae 660`. */
const plain = (word: string): string => word.toLowerCase().replace(/[\s\-_]+/g, '');

const index = new Map<string, Material>();
for (const material of materials)
  for (const word of [material.key, material.name, ...material.aliases]) index.set(plain(word), material);

/** The material of that key, name or alias; nothing for a word that fits none or several, such as `bronze`. */
export const materialByKey = (key: string): Material | undefined => index.get(plain(key));

/** Every material with the word in its name, kind or aliases: what to offer when {@link materialByKey} finds none. */
export const materialsLike = (word: string): readonly Material[] => {
  const wanted = plain(word);
  return wanted === ''
    ? []
    : materials.filter((m) =>
        [m.key, m.name, m.kind, ...m.aliases].some((text) => plain(text).includes(wanted)),
      );
};

const columns = (m: Material): Readonly<Record<string, Property | undefined>> => ({
  E: m.E,
  nu: m.nu,
  alpha: m.alpha,
  yield: m.yield,
  tensile: m.tensile,
  density: m.density,
  conductivity: m.conductivity,
  maxTemperature: m.maxTemperature,
});

/** The same rows as a table a choice input can read, column by column. */
export const materialTable = {
  title: 'Materials',
  rows: materials.map((m) => ({
    key: m.key,
    name: m.name,
    columns: columns(m),
    ...(m.formerKeys === undefined ? {} : { formerKeys: m.formerKeys }),
    ...(m.note === undefined ? {} : { note: m.note }),
  })),
};
