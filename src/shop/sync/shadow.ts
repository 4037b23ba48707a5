import * as Y from 'yjs';
import type { StoredFault } from '../../document/model/stored-fault.ts';
import { LIST_DOCUMENT, LIST_MAP, type Shared } from '../../document/sharing/wire.ts';
import { wordsOf } from '../base/words.ts';
import type { LostValue } from '../store/store.ts';
import { foreignIn, type Judge, joinFault, judgeOf, updateFault, withoutForeign } from './judge.ts';
import { lostIn } from './lost.ts';

/** What an update came to. */
export interface Taken {
  /** What it brought, as the document tells it; undefined where that is nothing. */
  update: Uint8Array | undefined;
  /** How far each client it brought something of has come. */
  reached: ReadonlyMap<number, number>;
  lost: readonly LostValue[];
  /** Some of it builds on what has not come, or is not of who sent it: that part was left out. */
  early: boolean;
}

const noUpdate = (error: unknown): StoredFault => ({ why: `no update: ${wordsOf(error)}` });

/** Updates are kept one by one up to so many, besides the whole from before them. */
const KEPT = 500;

/**
 * A document as all who have it open share it. An update is looked at before and after it is applied; of one that is refused
 * nothing remains, for the document is made anew from what was taken before.
 */
export class Shadow {
  private judge: Judge;
  private base: Uint8Array | undefined;
  private log: Uint8Array[] = [];
  doc: Y.Doc;
  /** Bytes it takes, no fewer than it is stored in. */
  bytes = 0;
  /** Why it could not be made anew: it holds nothing any more, and nothing may be taken from it or told of it. */
  spoiled: string | undefined;

  private fault: StoredFault | undefined;
  private lost: LostValue[] = [];
  private emitted: Array<{ update: Uint8Array; transaction: Y.Transaction }> = [];

  constructor(
    private readonly name: string,
    private readonly maxItems: number,
  ) {
    this.judge = judgeOf(name);
    this.doc = this.begin();
  }

  /** What the store holds was looked at when it came. */
  load(updates: readonly Uint8Array[]): Map<number, number> {
    this.doc.transact(() => {
      for (const update of updates) Y.applyUpdate(this.doc, update, 'store');
    }, 'store');
    this.forgetEarly();
    this.emitted = [];
    this.keepWhole();
    return Y.decodeStateVector(Y.encodeStateVector(this.doc));
  }

  /**
   * @param isForeign tells clients of Yjs as which the sender may not write: what is new of them is left out
   * @param isKept another server has taken it, or the store has it
   * @returns a fault, for people, where nothing of it is taken.
   */
  take(
    update: Uint8Array,
    isForeign: (client: number) => boolean = () => false,
    isKept = false,
  ): Taken | { fault: StoredFault } {
    if (this.spoiled !== undefined) return { fault: { why: this.spoiled } };
    this.fault = undefined;
    this.lost = [];
    this.emitted = [];
    let own = update;
    try {
      const looked = updateFault(update, this.judge, this.maxItems);
      if ('fault' in looked) return looked;
      const why = joinFault(this.doc, looked.structs);
      if (why !== undefined) return { fault: { why } };
      own = withoutForeign(update, foreignIn(this.doc, looked.structs, isForeign));
    } catch (error) {
      return { fault: noUpdate(error) };
    }
    let taken: Taken | undefined;
    try {
      Y.applyUpdate(this.doc, own, isKept ? 'kept' : 'client');
      if (this.fault === undefined) taken = this.came(own !== update);
    } catch (error) {
      this.fault ??= noUpdate(error);
    }
    if (!taken) {
      this.rebuild();
      return { fault: this.fault ?? { why: 'no update' } };
    }
    if (taken.update) {
      this.log.push(taken.update);
      this.bytes += taken.update.length;
      if (this.log.length > KEPT) this.compact();
    }
    return taken;
  }

  /** Everything, or what is missing behind a state vector. */
  state(vector?: Uint8Array): Uint8Array {
    return Y.encodeStateAsUpdate(this.doc, vector);
  }

  /** What a field of a sheet holds now. */
  field({ cell, key }: { cell?: string; key: string }): unknown {
    const cells = this.doc.getMap<Y.Map<unknown>>('cells');
    return (cell === undefined ? this.doc.getMap('sheet') : cells.get(cell))?.get(key);
  }

  /** Of the list: whether the sharing of a sheet was ended. */
  isEnded(sheet: string): boolean {
    return (this.doc.getMap(LIST_MAP).get(sheet) as Partial<Shared> | undefined)?.ended === true;
  }

  /** Puts one whole in place of the updates, which may be fewer bytes. Where that fails they stay. */
  compact(): void {
    try {
      this.keepWhole();
    } catch {
      this.rebuild();
    }
  }

  end(): void {
    this.doc.destroy();
  }

  private keepWhole(): void {
    this.base = Y.encodeStateAsUpdate(this.doc);
    this.log = [];
    this.bytes = this.base.length;
  }

  /** What the transactions of an update brought. */
  private came(leftOut: boolean): Taken {
    const early = this.forgetEarly() || leftOut;
    const reached = new Map<number, number>();
    for (const { transaction } of this.emitted)
      for (const [client, clock] of transaction.afterState)
        if (clock !== (transaction.beforeState.get(client) ?? 0)) reached.set(client, clock);
    const [first, ...more] = this.emitted.map((one) => one.update);
    const update = first && (more.length > 0 ? Y.mergeUpdates([first, ...more]) : first);
    return { update, reached, lost: this.lost, early };
  }

  /** Updates that wait for others would be looked at when these come, in somebody else's name. Whoever has them all sends them again when asked. */
  private forgetEarly(): boolean {
    const { store } = this.doc;
    const early = store.pendingStructs !== null || store.pendingDs !== null;
    store.pendingStructs = null;
    store.pendingDs = null;
    return early;
  }

  private begin(): Y.Doc {
    const doc = this.judge.empty();
    doc.on('afterTransaction', (transaction: Y.Transaction) => {
      if (transaction.origin === 'store') return;
      this.fault ??=
        this.judge.fault(doc, transaction) ??
        (transaction.origin === 'client' ? this.judge.excess?.(doc, transaction) : undefined);
      if (this.fault === undefined && this.name !== LIST_DOCUMENT)
        this.lost.push(...lostIn(doc, transaction));
    });
    doc.on('update', (update: Uint8Array, _origin: unknown, _doc: Y.Doc, transaction: Y.Transaction) => {
      this.emitted.push({ update, transaction });
    });
    return doc;
  }

  private rebuild(): void {
    this.doc.destroy();
    this.doc = this.begin();
    try {
      this.doc.transact(() => {
        if (this.base) Y.applyUpdate(this.doc, this.base, 'store');
        for (const update of this.log) Y.applyUpdate(this.doc, update, 'store');
      }, 'store');
    } catch (error) {
      this.spoiled = wordsOf(error);
      this.doc.destroy();
      this.doc = this.begin();
    }
    this.emitted = [];
  }
}
