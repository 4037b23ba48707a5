import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { Engine } from '../engine.ts';
import { isOnly, recordText, type SheetChange } from '../rows/change.ts';
import type { CellResult, SheetResults } from '../rows/results.ts';

/** A cell for which the engine holds what is being typed, in place of what the sheet has. */
interface Typed {
  before: CellRecord;
  /** {@link recordText} of the record held. */
  held: string;
}

/**
 * An engine that works out an entry while it is still being typed, so that its figures are there when it is made. Until
 * then they are nobody's but the asker's, and all else is answered from the sheet as it is. Each answer has all that
 * changed since the one before.
 */
export class Ahead {
  private typed: Typed | undefined;
  /** Results that no answer has had yet, the latest of each cell. */
  private readonly untold = new Map<string, CellResult>();

  constructor(private readonly engine: Engine) {}

  /** The sheet with `record` in place of its cell's own. */
  prepare(record: CellRecord): SheetResults {
    const { typed } = this;
    const other = typed?.before.id === record.id ? undefined : typed?.before;
    const before = typed && !other ? typed.before : this.engine.record(record.id);
    const held = recordText(record);
    if (!before || held === typed?.held) return this.nothing();
    this.typed = { before, held };
    return this.tell(this.engine.apply({ changed: other ? [other, record] : [record] }));
  }

  load(file: SheetFile): SheetResults {
    this.typed = undefined;
    return this.tell(this.engine.load(file));
  }

  /** What the engine gives for a change, beyond what it was prepared for. */
  apply(change: SheetChange): SheetResults {
    const { typed } = this;
    this.typed = undefined;
    if (!typed) return this.tell(this.engine.apply(change));
    if (isOnly(change, typed.held)) return this.nothing();
    const { before } = typed;
    const { changed = [], gone = [] } = change;
    const given = gone.includes(before.id) || changed.some(({ id }) => id === before.id);
    return this.tell(this.engine.apply(given ? change : { ...change, changed: [before, ...changed] }));
  }

  /** The engine with the sheet as it is. */
  settled(): Engine {
    const { typed, engine } = this;
    this.typed = undefined;
    if (typed)
      for (const cell of engine.apply({ changed: [typed.before] }).cells) this.untold.set(cell.id, cell);
    return engine;
  }

  /** The whole sheet as it is, worked out anew. */
  renew(): SheetResults {
    return this.tell(this.settled().renew());
  }

  private nothing(): SheetResults {
    return this.tell({ rev: this.engine.revision, cells: [], gone: [] });
  }

  private tell(results: SheetResults): SheetResults {
    const { untold } = this;
    if (untold.size === 0) return results;
    for (const cell of results.cells) untold.set(cell.id, cell);
    for (const id of results.gone) untold.delete(id);
    const cells = [...untold.values()];
    untold.clear();
    return { ...results, cells };
  }
}
