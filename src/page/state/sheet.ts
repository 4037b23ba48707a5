import { batch, createMemo, createSignal, onCleanup, untrack } from 'solid-js';
import { createStore, reconcile } from 'solid-js/store';
import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { looks } from '../../../shared/sheet/characters.ts';
import { fieldsIn } from '../../../shared/sheet/field.ts';
import type {
  CellRecord,
  DecisionRule,
  SheetFile,
  SheetUnits,
  TitleBlock,
} from '../../../shared/sheet/format.ts';
import { numberLines } from '../../../shared/sheet/numbering.ts';
import { type Fork, forksOf, takenInstead } from '../../../shared/sheet/ways.ts';
import type { Change } from '../../document/model/change.ts';
import type { SheetDocument } from '../../document/sheet-document.ts';
import { standingOf } from '../../engine/report/standing.ts';
import type { CellResult, OutputResult, SheetResults } from '../../engine/rows/results.ts';
import type { EngineClient } from '../../engine/worker/client-types.ts';
import { usesComma } from '../kit/decimal-mark.ts';
import { createKept } from '../kit/keep-equal.ts';
import { afterPointer } from '../kit/pointer.ts';
import { sameEntries } from '../kit/same-entries.ts';
import { say } from '../kit/words.ts';
import { createConflicts } from './conflicts.ts';
import { countChecks, sameCounts } from './counts.ts';
import { createElsewhere } from './elsewhere.ts';
import { createLines, type Line } from './lines.ts';
import { Baseline } from './moves.ts';
import { onceStored } from './once-stored.ts';
import { drawFigures, withFigures } from './with-figures.ts';

interface State {
  title: TitleBlock;
  units: SheetUnits;
  rule: DecisionRule;
  order: string[];
  undo: string | undefined;
  redo: string | undefined;
  /** Revision of the last results; 0 until the first ones. */
  rev: number;
}

/** What of a cell the figures depend on. */
const computedPart = (record: CellRecord): string =>
  JSON.stringify(
    [...fieldsIn(record, CELL_FIELDS)]
      .flatMap(([path, { computed }, value]) => (computed ? [[path, value] as const] : []))
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

const computesAlike = (a: CellRecord | undefined, b: CellRecord): boolean =>
  a ? computedPart(a) === computedPart(b) : b.role === 'section' || b.role === 'remark';

/** How a sheet is seen on this device, where that is not as it is written: in other lengths, every value the same. */
export interface Seen {
  units(own: SheetUnits): SheetUnits;
  cell(record: CellRecord): CellRecord;
  title(file: Pick<SheetFile, 'title' | 'units'>): TitleBlock;
  /** Whether these lines can be seen so. Where one cannot, the sheet is seen as it is written, and `lost` is called. */
  can(records: readonly CellRecord[]): boolean;
  lost(): void;
}

/** One line as it stood when it was asked for. */
export type LineNow = Pick<Line, 'record' | 'result'>;

/**
 * The sheet as signals: records from the document, results from the engine, one batch per change of either, so that no
 * half-updated sheet is ever drawn. Call it inside a component; it lets go of both with it.
 * @param settled settles once what has been entered so far is stored; undefined where no store is under way
 */
export const createSheet = (
  document: SheetDocument,
  engine: EngineClient,
  settled: () => Promise<void> | undefined,
) => {
  const lines = createLines();
  let seen: Seen | undefined;
  const unitsNow = () => ({ ...(seen?.units(document.units()) ?? document.units()) });
  const titleNow = () =>
    seen?.title({ title: document.title(), units: document.units() }) ?? document.title();
  /** The sheet as it is seen here. */
  const file = (): SheetFile => {
    const whole = document.toFile();
    const cells = seen ? whole.cells.map(seen.cell) : whole.cells;
    return { ...whole, title: titleNow(), units: unitsNow(), cells };
  };
  for (const record of structuredClone(document.cells())) lines.setRecord(record.id, record);
  const [state, setState] = createStore<State>({
    title: { ...document.title() },
    units: { ...document.units() },
    rule: document.rule(),
    order: document.order(),
    undo: document.undoLabel(),
    redo: document.redoLabel(),
    rev: 0,
  });
  /** The way taken, by what the ways lead to: any name at all, so no store, whose names are fields. */
  const [ways, setWays] = createSignal(document.ways());
  const [recorded, noteRecords] = createSignal(undefined, { equals: false });
  const [shaped, noteShapes] = createSignal(undefined, { equals: false });
  /**
   * Every line as it stood after the last change of the records or of more than figures, in order: to depend on each of a
   * thousand of them would cost more than an edit.
   */
  const all = createMemo(() => {
    recorded();
    shaped();
    return untrack(() =>
      state.order.flatMap((id): LineNow[] => {
        const line = lines.get(id);
        return line ? [{ record: line.record, result: line.result }] : [];
      }),
    );
  });

  const numbered = () => numberLines(state.order, (id) => lines.get(id)?.record.role);
  const [numbers, setNumbers] = createSignal(untrack(numbered), { equals: sameEntries });
  const named = () => {
    const all = state.order.map((id) => [lines.get(id)?.record.name, id] as const);
    return new Map(all.filter(([name]) => name));
  };
  const [byName, setByName] = createSignal(untrack(named), { equals: sameEntries });

  const byLooks = createMemo(() => {
    const found = new Map<string, string[]>();
    for (const name of byName().keys())
      if (name) found.set(looks(name), [...(found.get(looks(name)) ?? []), name]);
    return found;
  });

  const baseline = new Baseline();
  /** What the edit before the last one moved still stands on the lines: it goes as the new figures come, in one drawing. */
  let outdated = false;
  const beginEdit = () => {
    baseline.reset();
    outdated = true;
  };

  const movesFigures = ({ settings, gone }: Change, changed: readonly CellRecord[]): boolean =>
    untrack(
      () =>
        settings ||
        gone.length > 0 ||
        changed.some((record) => !computesAlike(lines.get(record.id)?.record, record)),
    );

  const showChange = (change: Change, changed: readonly CellRecord[]) =>
    untrack(() => {
      const { gone } = change;
      const before = changed.map(({ id }) => lines.get(id)?.record);
      for (const record of changed) lines.setRecord(record.id, structuredClone(record));
      for (const id of gone) lines.remove(id);
      if (change.order || gone.length > 0) setState('order', reconcile(document.order()));
      if (change.settings) {
        setState('title', reconcile({ ...document.title() }));
        setState('units', reconcile(unitsNow()));
        setState('rule', document.rule());
        setWays(document.ways());
      }
      setState({ undo: document.undoLabel(), redo: document.redoLabel() });
      const shifted = change.order || gone.length > 0;
      if (shifted || changed.some(({ role }, i) => role !== before[i]?.role)) setNumbers(numbered());
      if (shifted || changed.some(({ name }, i) => name !== before[i]?.name)) setByName(named());
      noteRecords();
    });

  /** Shows it in another way: figures and messages come anew, and no value changes. */
  const see = (next: Seen | undefined): void => {
    if (!seen && !next) return;
    seen = next;
    const whole = file();
    engine.load(whole);
    batch(() => {
      for (const record of whole.cells) lines.setRecord(record.id, record);
      setState('units', reconcile(whole.units));
      noteRecords();
    });
  };

  const stopDocument = document.observe((change) => {
    const gone = [...change.gone];
    const written = change.changed.flatMap((id) => document.cell(id) ?? []);
    if (seen && !seen.can(change.settings ? document.cells() : written)) {
      const { lost } = seen;
      see(undefined);
      lost();
    }
    const changed = seen ? written.map(seen.cell) : written;
    // The engine first: it works while the page changes.
    engine.update({
      ...(changed.length > 0 && { changed }),
      ...(gone.length > 0 && { gone }),
      ...(change.settings && {
        settings: {
          units: unitsNow(),
          rule: document.rule(),
          ...(document.ways() && { ways: document.ways() }),
          ...(titleNow().referenceTemperature && {
            referenceTemperature: titleNow().referenceTemperature,
          }),
        },
      }),
    });
    if (movesFigures(change, changed)) beginEdit();
    // Nothing moves under a finger, whoever wrote: it would press what has come there.
    afterPointer(() => withFigures(() => batch(() => showChange(change, changed))));
  });

  const write = (cells: readonly CellResult[]): void => {
    if (outdated) lines.dropMoves(new Set(cells.map(({ id }) => id)));
    outdated = false;
    for (const result of cells) {
      const before = lines.resultOf(result.id);
      if (before) baseline.keep(result.id, before.outputs);
      lines.write(result, baseline.moves(result));
    }
  };
  const take = ({ cells, rev }: SheetResults): void =>
    drawFigures(
      () => untrack(() => write(cells)),
      () => {
        const first = state.rev === 0;
        if (lines.settle() || first) noteShapes();
        setState('rev', rev);
      },
    );
  const afterStore = onceStored(settled);
  let gone = false;
  const stopEngine = engine.onResults((results) =>
    afterStore(() => afterPointer(() => gone || take(results))),
  );
  onCleanup(() => {
    gone = true;
    stopDocument();
    stopEngine();
  });

  /** An edit elsewhere asks no line anew whether it counts. */
  const forks = createKept<readonly Fork[]>(
    () =>
      forksOf(
        all().map(({ record }) => record),
        ways(),
      ),
    [],
  );
  /** Figures of what is open stand in it, so it is asked for anew with every answer of the engine. */
  const standing = createMemo(() => {
    if (state.rev === 0) return standingOf([], state.units);
    const now = all().map(({ record }) => ({ record, result: lines.resultOf(record.id) }));
    return standingOf(now, state.units, { comma: usesComma(), say });
  });

  const counts = createMemo(() => countChecks(all().flatMap(({ result }) => result ?? [])), undefined, {
    equals: sameCounts,
  });

  return {
    state,
    document,
    engine,
    file,
    see,
    /** Takes a choice of lengths for this device alone, where the sheet is shared. */
    lengths: undefined as ((length: SheetUnits['length']) => void) | undefined,
    line: lines.get,
    lines: all,
    /** One output of a cell; its shape where its figures are not asked for. */
    output: (id: string, output: string): OutputResult | undefined => lines.get(id)?.result?.outputs[output],
    shape: (id: string, output: string): OutputResult | undefined => lines.get(id)?.shape?.outputs[output],
    numberOf: (id: string): number | undefined => numbers().get(id),
    /** What people call a cell: its label, else its name. */
    titleOf: (id: string): string => {
      const record = lines.get(id)?.record;
      return (record?.label && say(record.label)) || record?.name || 'a line without a name';
    },
    /** Cells that refer to a cell. */
    usersOf: (id: string): string[] =>
      all()
        .filter(({ result }) => result?.feeds.includes(id))
        .map(({ record }) => record.id),
    idOf: (name: string): string | undefined => byName().get(name),
    /** Lines whose name looks like this one, and is another. */
    looksLike: (name: string): string[] =>
      (byLooks().get(looks(name)) ?? [])
        .filter((other) => other !== name)
        .map((other) => byName().get(other)!),
    counts,
    /** What is proven, and what is open: the head line. */
    standing,
    /** Where several ways lead to one end. */
    forks,
    /** The way taken in place of that of a line; undefined where the line counts. */
    asideOf: (record: CellRecord): string | undefined => takenInstead(record, forks()),
    /** Who else types where, where the sheet is shared. */
    elsewhere: createElsewhere(),
    /** What was entered here and does not stand. */
    conflicts: createConflicts(document),
    /** Something is still to be worked out: nothing is green then. */
    waits: (): boolean => state.rev === 0 || counts().of.waiting > 0,
  };
};

export type Sheet = ReturnType<typeof createSheet>;
