import type { CellKind, ChoiceTable, TradeFunction } from './record/cell.ts';

export interface Catalogue {
  kinds: ReadonlyMap<string, CellKind>;
  tables: ReadonlyMap<string, ChoiceTable>;
  functions: readonly TradeFunction[];
}

/** Modules by path, as found in the folders. The name of a table is the name of its file. */
export interface Folders {
  kinds: Readonly<Record<string, CellKind>>;
  choices: Readonly<Record<string, ChoiceTable>>;
  functions: Readonly<Record<string, readonly TradeFunction[]>>;
}

/** Two files of the library claim one name: a mistake of whoever adds to it, so it stops the start. */
class CatalogueError extends Error {
  override name = 'CatalogueError';
}

const byName = <T>(what: string, entries: readonly (readonly [name: string, path: string, value: T])[]) => {
  const found = new Map<string, { path: string; value: T }>();
  for (const [name, path, value] of entries) {
    const other = found.get(name);
    if (other)
      throw new CatalogueError(`${what} "${name}" stands in ${other.path} and in ${path}: rename one.`);
    found.set(name, { path, value });
  }
  return new Map([...found].map(([name, { value }]) => [name, value] as const));
};

/** Name of a file without its folder and its ending. */
export const fileName = (path: string): string => path.replace(/^.*\//, '').replace(/\.\w+$/, '');

/** The functions of all files, in their order. */
export const namedFunctions = (files: Folders['functions']): readonly TradeFunction[] => [
  ...byName(
    'Trade function',
    Object.entries(files).flatMap(([path, list]) => list.map((f) => [f.name, path, f] as const)),
  ).values(),
];

export const catalogueOf = (folders: Folders): Catalogue => ({
  kinds: byName(
    'Cell kind',
    Object.entries(folders.kinds).map(([path, kind]) => [kind.key, path, kind] as const),
  ),
  tables: byName(
    'Table',
    Object.entries(folders.choices).map(([path, table]) => [fileName(path), path, table] as const),
  ),
  functions: namedFunctions(folders.functions),
});
