import { createResource } from 'solid-js';
import type { SheetFile } from '../../../shared/sheet/format.ts';

export interface Offer {
  /** Name of the file, the key of the list. */
  key: string;
  file: SheetFile;
}

const files = import.meta.glob<SheetFile>('../../../templates/**/*.json', { import: 'default' });

export const loadOffers = async (): Promise<Offer[]> =>
  Promise.all(
    Object.entries(files).map(async ([path, get]) => ({
      key: path.replace(/^.*\//, ''),
      file: await get(),
    })),
  );

/** Sheets that come with the program: templates to start from and filled jobs to look at. */
export const createOffers = () => {
  const [offers] = createResource(loadOffers, { initialValue: [] });
  const list = () => offers.latest;
  return {
    templates: () => list().filter(({ file }) => file.template === true),
    filled: () => list().filter(({ file }) => file.template !== true),
  };
};
