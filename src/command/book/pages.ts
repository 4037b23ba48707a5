import type { Library } from '../../engine/rows/library.ts';
import { indexPage } from './index-page.ts';
import { kindPage } from './kind-page.ts';

const INDEX = 'BOOK.md';
export const FOLDER = 'book';

/** The whole book: text by path from the library's folder. */
export const bookPages = (library: Library): ReadonlyMap<string, string> =>
  new Map([
    [INDEX, indexPage(library.kinds.values())],
    ...[...library.kinds.values()].map(
      (kind) => [`${FOLDER}/${kind.key}.md`, kindPage(library, kind)] as const,
    ),
  ]);
