import { batch, createMemo, createSignal, onCleanup } from 'solid-js';
import { createStore, reconcile, unwrap } from 'solid-js/store';
import type { CellRecord, DecisionRule, SheetUnits, TitleBlock } from '../../../shared/sheet/format.ts';
import type { Change } from '../../document/change.ts';
import type { SheetDocument } from '../../document/sheet-document.ts';
import type { EngineClient } from '../../engine/client-types.ts';
import type { CellResult, SheetResults } from '../../engine/results.ts';
import { say } from '../preferences/words.ts';
import { countChecks } from './counts.ts';
import { Baseline, type Move } from './moves.ts';
import { numberLines } from './numbering.ts';
import { showWaiting, withFigures } from './with-figures.ts';

/** One cell as the page shows it. */
export interface Line {
  record: CellRecord;
  /** Absent until the engine has answered for it. */
  result?: CellResult;
  /** What the last edit did, by output. */
  moved: Record<string, Move>;
}

interface State {
  title: TitleBlock;
  units: SheetUnits;
  rule: DecisionRule;
  order: string[];
  lines: Record<string, Line>;
  undo: string | undefined;
  redo: string | undefined;
  /** Revision of the last results; 0 until the first ones. */
  rev: number;
}

/** Fields that say something about a cell without entering into any value: changing them moves no figure. */
const BESIDE = new Set([
  'label',
  'name',
  'note',
  'locked',
  'display',
  'dismissed',
  'example',
  'fill',
  'examples',
]);

const computesAlike = (a: CellRecord | undefined, b: CellRecord): boolean => {
  if (!a) return b.role === 'section' || b.role === 'remark';
  const strip = (record: CellRecord) =>
    JSON.stringify(
      Object.entries(record)
        .filter(([key]) => !BESIDE.has(key))
        .sort(([x], [y]) => (x < y ? -1 : 1)),
    );
  return strip(a) === strip(b);
};

/**
 * The sheet as stores: records from the document, results from the engine, one batch per change of either, so that no
 * half-updated sheet is ever drawn. Call it inside a component; it lets go of both with it.
 */
export const createSheet = (document: SheetDocument, engine: EngineClient) => {
  const records = structuredClone(document.cells());
  const [state, setState] = createStore<State>({
    title: { ...document.title() },
    units: { ...document.units() },
    rule: document.rule(),
    order: document.order(),
    lines: Object.fromEntries(records.map((record) => [record.id, { record, moved: {} }])),
    undo: document.undoLabel(),
    redo: document.redoLabel(),
    rev: 0,
  });
  const [recorded, noteRecords] = createSignal(undefined, { equals: false });
  /**
   * Every line in order, read past the store: to hang on each field of a thousand lines would cost more than an edit.
   * Asks again after each change of the records and each answer of the engine.
   */
  const lines = (): Line[] => {
    recorded();
    void state.rev;
    const { order, lines: all } = unwrap(state);
    return order.flatMap((id) => all[id] ?? []);
  };

  const baseline = new Baseline();
  /** What the edit before the last one moved still stands on the lines: it goes as the new figures come, in one drawing. */
  let outdated = false;
  const beginEdit = () => {
    baseline.reset();
    outdated = true;
  };
  const dropMoves = (but: ReadonlySet<string>) => {
    outdated = false;
    for (const [id, line] of Object.entries(unwrap(state.lines))) {
      if (!but.has(id) && Object.keys(line.moved).length > 0) setState('lines', id, 'moved', reconcile({}));
    }
  };

  const showChange = (change: Change, changed: readonly CellRecord[]) =>
    batch(() => {
      const { gone } = change;
      const moves =
        change.settings ||
        gone.length > 0 ||
        changed.some((record) => !computesAlike(state.lines[record.id]?.record, record));
      if (moves) beginEdit();
      for (const record of changed) {
        // The document's own records must not be changed in place, which a store would do.
        const own = structuredClone(record);
        if (state.lines[record.id]) setState('lines', record.id, 'record', reconcile(own));
        else setState('lines', record.id, { record: own, moved: {} });
      }
      for (const id of gone) setState('lines', id, undefined!);
      if (change.order || gone.length > 0) setState('order', reconcile(document.order()));
      if (change.settings) {
        setState('title', reconcile({ ...document.title() }));
        setState('units', reconcile({ ...document.units() }));
        setState('rule', document.rule());
      }
      setState({ undo: document.undoLabel(), redo: document.redoLabel() });
      noteRecords();
    });

  const stopDocument = document.observe((change) => {
    const gone = [...change.gone];
    const changed = change.changed.flatMap((id) => document.cell(id) ?? []);
    // The engine first: it works while the page changes.
    engine.update({
      ...(changed.length > 0 && { changed }),
      ...(gone.length > 0 && { gone }),
      ...(change.settings && {
        settings: {
          units: document.units(),
          rule: document.rule(),
          ...(document.title().referenceTemperature && {
            referenceTemperature: document.title().referenceTemperature,
          }),
        },
      }),
    });
    withFigures(() => showChange(change, changed));
  });

  const take = (results: SheetResults) =>
    batch(() => {
      showWaiting();
      if (outdated) dropMoves(new Set(results.cells.map(({ id }) => id)));
      for (const result of results.cells) {
        const line = state.lines[result.id];
        if (!line) continue;
        if (line.result) {
          const before = unwrap(line.result).outputs;
          baseline.keep(result.id, () => before);
        }
        setState('lines', result.id, 'result', reconcile(result));
        setState('lines', result.id, 'moved', reconcile(baseline.moves(result)));
      }
      setState('rev', results.rev);
    });
  const stopEngine = engine.onResults(take);
  onCleanup(() => {
    stopDocument();
    stopEngine();
  });

  const numbers = createMemo(() => numberLines(state.order, (id) => state.lines[id]?.record.role));
  const byName = createMemo(() => {
    const found = new Map<string, string>();
    for (const id of state.order) {
      const name = state.lines[id]?.record.name;
      if (name) found.set(name, id);
    }
    return found;
  });
  const counts = createMemo(() => countChecks(lines().flatMap(({ result }) => result ?? [])), undefined, {
    equals: (a, b) => JSON.stringify(a) === JSON.stringify(b),
  });

  return {
    state,
    document,
    engine,
    line: (id: string): Line | undefined => state.lines[id],
    lines,
    numberOf: (id: string): number | undefined => numbers().get(id),
    /** What people call a cell: its label, else its name. */
    titleOf: (id: string): string => {
      const record = state.lines[id]?.record;
      return (record?.label && say(record.label)) || record?.name || 'a line without a name';
    },
    /** Cells that refer to a cell. */
    usersOf: (id: string): string[] =>
      lines()
        .filter(({ result }) => result?.feeds.includes(id))
        .map(({ record }) => record.id),
    idOf: (name: string): string | undefined => byName().get(name),
    counts,
    /** Something is still to be worked out: nothing is green then. */
    waits: (): boolean => state.rev === 0 || counts().of.waiting > 0,
  };
};

export type Sheet = ReturnType<typeof createSheet>;
