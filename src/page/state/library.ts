import { createMemo, createRoot, createSignal } from 'solid-js';
import type { GrowingLibrary } from '../../../cells/growing-library.ts';
import type { CellKind } from '../../../cells/record/cell.ts';
import type { Library } from '../../engine/rows/library.ts';
import { preferences } from '../kit/preferences.ts';
import { sayKind } from '../kit/words.ts';

/** What has been fetched; a signal that changes whenever more has come. */
const [fetched, setFetched] = createSignal<GrowingLibrary | undefined>(undefined, { equals: false });
let asked: Promise<GrowingLibrary> | undefined;

const begin = (): Promise<GrowingLibrary> => {
  asked ??= import('../../../cells/on-use.ts').then(
    (module) => setFetched(module.libraryOnUse())!,
    (error: unknown) => {
      asked = undefined;
      throw error;
    },
  );
  return asked;
};

const fetchKinds = async (library: GrowingLibrary, kinds: Iterable<string>): Promise<void> => {
  const { size } = library.kinds;
  await library.fetch(kinds);
  if (library.kinds.size > size) setFetched(library);
};

/** Kinds asked for and not yet there: those of one pass over a sheet are fetched together. */
let wanted = new Set<string>();

const want = (library: GrowingLibrary, kind: string): void => {
  if (wanted.size === 0)
    queueMicrotask(() => {
      const kinds = wanted;
      wanted = new Set();
      void fetchKinds(library, kinds);
    });
  wanted.add(kind);
};

/** The kinds that are there, in the words of the user; one that is asked for and is not is fetched. */
class KindsOnUse extends Map<string, CellKind> {
  constructor(
    entries: Iterable<readonly [string, CellKind]>,
    private readonly library: GrowingLibrary,
  ) {
    super(entries);
  }

  override get(key: string): CellKind | undefined {
    const found = super.get(key);
    if (!found && this.library.lacks(key)) want(this.library, key);
    return found;
  }

  /** True for every kind there is, fetched or not. */
  override has(key: string): boolean {
    return super.has(key) || this.library.lacks(key);
  }
}

/** A kind in the words the user prefers, the same object as long as they stay. */
const sayer = createRoot(() =>
  createMemo(() => {
    const { bush, play } = preferences();
    if (bush === 'as written' && play === 'as written') return (kind: CellKind) => kind;
    const said = new WeakMap<CellKind, CellKind>();
    return (kind: CellKind): CellKind => {
      const found = said.get(kind) ?? sayKind(kind);
      said.set(kind, found);
      return found;
    };
  }),
);

const shown = createRoot(() =>
  createMemo((): Library | undefined => {
    const library = fetched();
    if (!library) return undefined;
    const saying = sayer();
    const entries = library.keys.flatMap((key) => {
      const kind = library.kinds.get(key);
      return kind ? [[key, saying(kind)] as const] : [];
    });
    const { tables, functions } = library;
    return { kinds: new KindsOnUse(entries, library), tables, functions };
  }),
);

const whole = createRoot(() =>
  createMemo(() => (fetched()?.keys.every((key) => !fetched()?.lacks(key)) ? shown() : undefined)),
);

/**
 * The cell library in the trade words the user prefers; undefined until its functions are there. It is not needed to read
 * a sheet's plain lines. A kind of cell comes when it is asked for: undefined until then, and whoever asked is told.
 */
export const useLibrary = (): (() => Library | undefined) => {
  void loadLibrary().catch(() => undefined);
  return shown;
};

/** The same with every kind; undefined until all are there. */
export const useWholeLibrary = (): (() => Library | undefined) => {
  void begin()
    .then((library) => fetchKinds(library, library.keys))
    .catch(() => undefined);
  return whole;
};

/** The library with these kinds, as written. */
export const loadLibrary = async (kinds: Iterable<string> = []): Promise<Library> => {
  const library = await begin();
  await fetchKinds(library, kinds);
  return library;
};
