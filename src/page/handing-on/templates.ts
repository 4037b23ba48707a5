import type { SheetFile, TitleBlock } from '../../../shared/sheet/format.ts';

/** A sheet that comes with the program. What a list shows of it is loaded with the page; the sheet itself is fetched when it is wanted. */
export interface Offer {
  /** Name of the file, the key of the list. */
  key: string;
  title: TitleBlock;
  template: boolean;
  file: () => Promise<SheetFile>;
}

const heads = import.meta.glob<Pick<Offer, 'title' | 'template'>>('../../../templates/**/*.json', {
  eager: true,
  query: '?head',
  import: 'default',
});
const files = import.meta.glob<SheetFile>('../../../templates/**/*.json', { import: 'default' });

/** Templates to start from and filled jobs to look at. */
export const offers: readonly Offer[] = Object.entries(files).map(([path, file]) => ({
  key: path.replace(/^.*\//, ''),
  ...(heads[path] as Pick<Offer, 'title' | 'template'>),
  file,
}));
