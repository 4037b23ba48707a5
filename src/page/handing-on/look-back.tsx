import { createMemo, createResource, createSignal, onCleanup, Show } from 'solid-js';
import type { CellRecord, SheetFile } from '../../../shared/sheet/format.ts';
import type { ExportLine } from '../../document/sharing/export-line.ts';
import type { Revision } from '../../document/storage/vault.ts';
import type { CellResult } from '../../engine/rows/results.ts';
import { useLibrary } from '../state/library.ts';
import { showIn } from '../state/show.ts';
import { Contents } from './contents.tsx';
import { exportLines } from './export-lines.ts';
import { fileOf } from './file-of.ts';

/** Works a sheet out beside the one that is open. */
const results = async (file: SheetFile, stopped: (stop: () => void) => void) => {
  const { createEngineClient } = await import('../../engine/worker/client.ts');
  return new Promise<Map<string, CellResult>>((resolve, reject) => {
    const engine = createEngineClient(reject);
    stopped(() => engine.close());
    engine.onResults(({ cells }) => {
      resolve(new Map(cells.map((cell) => [cell.id, cell])));
      engine.close();
    });
    engine.load(file);
  });
};

/** A kept state of the sheet, with the values it had: to look at, not to change. */
export default function LookBack(props: { revision: Revision; when: string }) {
  const file = createMemo(() => fileOf(props.revision));
  const [stop, setStop] = createSignal<() => void>();
  onCleanup(() => stop()?.());
  const [found] = createResource(file, (of) =>
    results(of, (end) => setStop(() => end)).catch(() => undefined),
  );
  const library = useLibrary();
  const lines = createMemo(() => {
    const [of, all] = [file(), found.latest];
    const byCell = new Map<string, ExportLine[]>();
    if (of && all)
      for (const line of exportLines(of.cells, all, of.units)) {
        const { id, kind } = line.cell;
        // Of a library cell what its face shows.
        const outputs = library()?.kinds.get(kind ?? '')?.outputs ?? [];
        if (line.output !== 'value' && !outputs.find(({ name }) => name === line.output)?.face) continue;
        byCell.set(id, [...(byCell.get(id) ?? []), line]);
      }
    return byCell;
  });
  const written = ({ figure, unit, output, label }: ExportLine): string => {
    if (!figure) return '';
    const amount = showIn(unit).amount(figure.value, { ...figure, centre: figure.value, u: 0 });
    return output === 'value' ? amount : `${label} ${amount}`;
  };
  const figureOf = (cell: CellRecord) => ({
    values: (lines().get(cell.id) ?? []).map(written).filter(Boolean),
    check: [...new Set((lines().get(cell.id) ?? []).map(({ check }) => check))].filter(Boolean).join('; '),
  });
  return (
    <Show
      when={file()}
      fallback={<p role="alert">This state cannot be read any more; it stays where it is.</p>}
    >
      {(of) => (
        <section class="look-back grid gap-2 min-w-0">
          <h3>
            As it stood on {props.when}: {of().title.title}
          </h3>
          <Contents cells={of().cells} figures={figureOf} />
        </section>
      )}
    </Show>
  );
}
