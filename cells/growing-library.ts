import { type Catalogue, fileName } from './catalogue-of.ts';
import type { CellKind, ChoiceTable, TradeFunction } from './record/cell.ts';

/** Kinds and tables by the path of their file, to be fetched; the name of the file is the key of the kind. */
export interface FilesOnUse {
  kinds: Readonly<Record<string, () => Promise<CellKind>>>;
  choices: Readonly<Record<string, () => Promise<ChoiceTable>>>;
  functions: readonly TradeFunction[];
}

const byFile = <T>(files: Readonly<Record<string, T>>): ReadonlyMap<string, T> =>
  new Map(Object.entries(files).map(([path, fetch]) => [fileName(path), fetch]));

/** A library that has what has been fetched of it so far. */
export class GrowingLibrary implements Catalogue {
  readonly kinds = new Map<string, CellKind>();
  readonly tables = new Map<string, ChoiceTable>();
  readonly functions: readonly TradeFunction[];
  private readonly kindFiles: FilesOf<CellKind>;
  private readonly tableFiles: FilesOf<ChoiceTable>;
  private readonly underWay = new Map<string, Promise<void>>();

  constructor({ kinds, choices, functions }: FilesOnUse) {
    this.kindFiles = byFile(kinds);
    this.tableFiles = byFile(choices);
    this.functions = functions;
  }

  /** Keys of all kinds there are, fetched or not. */
  get keys(): readonly string[] {
    return [...this.kindFiles.keys()];
  }

  /** There is such a kind, but it has not been fetched. */
  lacks(kind: string): boolean {
    return !this.kinds.has(kind) && this.kindFiles.has(kind);
  }

  /**
   * Fetches these kinds, each with the tables it chooses from. Never rejects: what could not be fetched is lacking still,
   * and is tried again when it is asked for again.
   */
  async fetch(kinds: Iterable<string>): Promise<void> {
    const wanted = [...new Set(kinds)].filter((kind) => this.lacks(kind));
    await Promise.all(wanted.map((kind) => this.once(`kind ${kind}`, () => this.fetchKind(kind))));
  }

  /** Fetches a table by itself; there may be none of that name. */
  async fetchTable(name: string): Promise<void> {
    const fetch = this.tableFiles.get(name);
    if (!fetch || this.tables.has(name)) return;
    await this.once(`table ${name}`, async () => void this.tables.set(name, await fetch()));
  }

  private async fetchKind(key: string): Promise<void> {
    const kind = await this.kindFiles.get(key)!();
    const choices = kind.inputs.flatMap(({ choice }) => choice ?? []);
    await Promise.all(choices.map((name) => this.fetchTable(name)));
    // Without its tables it would take any word for a choice.
    if (choices.some((name) => this.tableFiles.has(name) && !this.tables.has(name))) return;
    this.kinds.set(key, kind);
  }

  private once(what: string, work: () => Promise<void>): Promise<void> {
    let running = this.underWay.get(what);
    if (!running) {
      running = work()
        .catch(() => undefined)
        .finally(() => this.underWay.delete(what));
      this.underWay.set(what, running);
    }
    return running;
  }
}

type FilesOf<T> = ReadonlyMap<string, () => Promise<T>>;
