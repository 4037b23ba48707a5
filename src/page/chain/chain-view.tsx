import { createMemo, createSignal, onCleanup, onMount, Show } from 'solid-js';
import { fileName } from '../../document/files.ts';
import { createNarrow } from '../kit/narrow.ts';
import { addressOfSheet } from '../kit/router.ts';
import { say } from '../kit/words.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { useTools } from '../state/tools.ts';
import { ChainDrawing } from './chain-drawing.tsx';
import { placeColumn } from './column.ts';
import { chainGraph } from './graph.ts';
import { placeChain } from './layout.ts';
import { saveSvg } from './save-svg.ts';
import './chain.css';

/** Smallest scale at which the words of a drawing are still read. */
const LEGIBLE = 0.65;
/** What of the window's width the paper and its border take, CSS px. */
const BORDER = 50;

/** More lines than that are drawn in a column: ranks of them take long to find, and nobody reads so wide a drawing. */
const MANY = 600;

/** The whole sheet as a drawn chain: what feeds what, with the checks on it. */
export default function ChainView() {
  const context = useSheet();
  const { sheetId } = useTools();
  const library = useLibrary();
  /** Said by the user; until then a drawing is fitted as far as it stays legible. */
  const [said, setSaid] = createSignal<boolean>();
  const [behind, setBehind] = createSignal(false);
  const narrow = createNarrow();
  const placed = createMemo(() => {
    const graph = chainGraph(context, library(), behind());
    return narrow() || graph.nodes.length > MANY ? placeColumn(graph) : placeChain(graph);
  });
  const [room, setRoom] = createSignal(innerWidth - BORDER);
  const resized = () => setRoom(innerWidth - BORDER);
  onMount(() => addEventListener('resize', resized));
  onCleanup(() => removeEventListener('resize', resized));
  const wholeWidth = () => said() ?? (placed().width > room() && placed().width * LEGIBLE <= room());
  let svg: SVGSVGElement | undefined;
  const title = () => say(context.sheet.state.title.title) || 'Job sheet';
  return (
    <main class="paper chain-view" classList={{ waits: context.sheet.waits() }}>
      <div class="frame">
        <div class="toolbar">
          <a class="to-jobs" href={addressOfSheet(sheetId)}>
            Back to the sheet
          </a>
          <span class="flex-1" />
          <label class="tall-link gap-2">
            <input
              type="checkbox"
              class="tickable"
              checked={behind()}
              onChange={(event) => setBehind(event.currentTarget.checked)}
            />
            with gauges and materials
          </label>
          <label class="tall-link gap-2 phone:hidden">
            <input
              type="checkbox"
              class="tickable"
              checked={wholeWidth()}
              onChange={(event) => setSaid(event.currentTarget.checked)}
            />
            fit to the window
          </label>
          <button
            type="button"
            disabled={placed().nodes.length === 0}
            onClick={() => svg && saveSvg(svg, fileName(title()).replace(/\.fitwright\.json$/, '.svg'))}
          >
            Save as SVG
          </button>
          <button type="button" onClick={() => print()}>
            Print
          </button>
        </div>
        <h1 class="px-3 pt-3 text-head">{title()}: the chain</h1>
        <p class="caption px-3">
          {narrow() || placed().nodes.length > MANY
            ? 'In the order of the sheet, each line with what hangs on it. A press on a line goes to it.'
            : 'From left to right: what each line hangs on, and what hangs on it. A press on a line goes to it.'}
        </p>
        <Show
          when={placed().nodes.length > 0}
          fallback={<p class="caption px-3">There is no line to draw yet.</p>}
        >
          {/* What is as wide as the window is gone through as any page is, without a window of its own; so is all on a phone. */}
          <section
            class="chain-scroll overflow-auto m-2 phone:(m-1 max-h-none) print:(overflow-visible max-h-none)"
            classList={{ fit: wholeWidth(), 'max-h-[calc(100dvh-9rem)]': !wholeWidth() }}
            aria-label="Drawing"
            tabindex={0}
          >
            <ChainDrawing
              ref={(element) => {
                svg = element;
              }}
              chain={placed()}
              title={title()}
              onGo={(cell) => context.goTo(cell)}
            />
          </section>
        </Show>
      </div>
    </main>
  );
}
