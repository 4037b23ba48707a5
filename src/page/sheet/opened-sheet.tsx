import {
  createEffect,
  createResource,
  createSignal,
  type JSX,
  on,
  onCleanup,
  onMount,
  Show,
  Suspense,
} from 'solid-js';
import { MAX_LINES } from '../../../shared/sheet/format.ts';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import type { Shop } from '../../document/storage/shop.ts';
import type { EngineClient } from '../../engine/worker/client-types.ts';
import { loadCommit, loadEditor } from '../entry/load.ts';
import { Lines } from '../grid/lines.tsx';
import { MissingSheets } from '../handing-on/missing-sheets.tsx';
import { sharedHere } from '../joined/keys.ts';
import { sharing } from '../joined/sharing.ts';
import { whenIdle } from '../kit/idle.ts';
import { late } from '../kit/late.tsx';
import { createPrinting } from '../kit/printing.ts';
import { addressOfSheet, createPlace, go, type SheetPart } from '../kit/router.ts';
import { say } from '../kit/words.ts';
import { PrintSheet, printSheet, readyPaper } from '../print/load.ts';
import { createAdding } from '../state/adding.ts';
import { takeArrival } from '../state/arrival.ts';
import { createChain } from '../state/chain.ts';
import { SheetProvider } from '../state/context.ts';
import { createCursor } from '../state/cursor.ts';
import { focusWork } from '../state/focus-work.ts';
import { bringIntoView, rowElement } from '../state/in-place.ts';
import { createLocked } from '../state/locked.ts';
import { noteChecks } from '../state/note-checks.ts';
import { createNotices } from '../state/notices.ts';
import { lineRow, outputRow } from '../state/row-key.ts';
import { saveToFile } from '../state/save-file.ts';
import { createSheet } from '../state/sheet.ts';
import { createShow } from '../state/show.ts';
import { createTools, ToolsProvider } from '../state/tools.ts';
import { ConflictList } from './conflict-list.tsx';
import { HintBar } from './hint-bar.tsx';
import { keepOnOpening } from './keep-on-opening.ts';
import { LengthPair } from './length-pair.tsx';
import { NextEntry } from './next-entry.tsx';
import { NoticeBar } from './notice-bar.tsx';
import { offerTyped } from './offer-typed.ts';
import { SheetTools } from './sheet-tools.tsx';
import { Standing } from './standing.tsx';
import { TemplateLine } from './template-line.tsx';
import { TitleBlock } from './title-block.tsx';
import { Toolbar } from './toolbar.tsx';
import { TrashLine } from './trash-line.tsx';

/** In place of the lines, with a way back to them. */
const inPlaceOfLines = (said: JSX.Element) => (
  <main class="paper">
    {said}
    <p>
      <a href={location.hash.replace(/\/[^/]+$/, '')}>Back to the sheet</a>
    </p>
  </main>
);

const BenchView = late('The view at the machine', () => import('../bench/bench-view.tsx'), inPlaceOfLines);
const ChainView = late('The drawing of the chain', () => import('../chain/chain-view.tsx'), inPlaceOfLines);
const HeldBar = late('The comparison with held figures', () => import('./held-bar.tsx'));
const OverfullLine = late('What is said of a sheet with too many lines', () => import('./overfull-line.tsx'));
const JoinedBar = late('What joins the shop’s server', () => import('../joined/joined-bar.tsx'));

/** A sheet with its engine. The page stands before the engine does: figures come in when it answers. */
export const OpenedSheet = (props: { opened: OpenSheet; shop: Shop }) => {
  const [failure, setFailure] = createSignal<string>();
  const [engine] = createResource(async () => {
    const { createEngineClient } = await import('../../engine/worker/client.ts');
    return createEngineClient((error) => setFailure(error.message));
  });
  onCleanup(() => engine.latest?.close());
  return (
    <Show when={engine()} fallback={<p class="paper">Opening the sheet …</p>}>
      {(client) => <WorkingSheet {...props} engine={client()} failure={failure()} />}
    </Show>
  );
};

interface WorkingSheetProps {
  opened: OpenSheet;
  shop: Shop;
  engine: EngineClient;
  failure: string | undefined;
}

const WorkingSheet = (props: WorkingSheetProps) => {
  const sheet = createSheet(props.opened.document, props.engine, () => props.opened.settled());
  const first = sheet.state.order[0];
  const cursor = createCursor(first ? { row: lineRow(first), column: 'name' } : undefined);
  const notices = createNotices();
  const show = createShow(sheet);
  const chain = createChain(sheet, cursor);
  const printing = createPrinting();
  const adding = createAdding();
  const locked = createLocked();
  /** Begun with a value: whoever asks again must not have the whole page, and an open dialog, put away until it is there. */
  const [shared] = createResource(sharing, () => sharedHere(props.shop, props.opened.id), {
    initialValue: undefined,
  });
  /** Draws how the sheet stands with the shop's server, where it is shared. */
  const [standing, setStanding] = createSignal<() => JSX.Element>();
  const tools = createTools(sheet, props.opened, props.shop);
  props.engine.load(props.opened.document.toFile());

  const place = createPlace();
  const part = () => (place() as { part?: SheetPart }).part;

  // What was said about the lines is not about their chain, nor about the pad at the machine.
  createEffect(on(part, notices.close, { defer: true }));

  // Back at the lines, the keyboard is where the work was.
  createEffect(
    on(
      part,
      (now) =>
        now === undefined &&
        requestAnimationFrame(() => {
          focusWork({ sheet, cursor });
          // At the machine something may have been keyed in and not taken.
          offerTyped(typing);
        }),
      { defer: true },
    ),
  );

  const goTo = (cell: string, output?: string) => {
    if (part()) {
      go(addressOfSheet(props.opened.id));
      // The lines are there again once the address has been heard.
      addEventListener('hashchange', () => requestAnimationFrame(() => goTo(cell, output)), { once: true });
      return;
    }
    const line = lineRow(cell);
    const row = output && output !== 'value' ? outputRow(cell, output) : line;
    cursor.setUnfolded(true);
    cursor.move({ row: line, column: 'name' });
    if (rowElement(row)) cursor.move({ row, column: 'name' });
    bringIntoView(row);
    rowElement(row)?.querySelector<HTMLElement>('[data-column="name"]')?.focus({ preventScroll: true });
  };

  const typing = { sheet, cursor, notices, adding, locked, goTo };
  createEffect(() => {
    document.title = `${say(sheet.state.title.title) || 'Job sheet'} · Fitwright`;
  });
  onMount(() => whenIdle(() => void loadEditor().catch(() => undefined)));
  onMount(() => whenIdle(() => void readyPaper().catch(() => undefined)));
  // With nothing that keeps the page, what is not here when the line goes cannot be had in the yard.
  onMount(() => {
    if (isSecureContext) return;
    whenIdle(
      () =>
        void Promise.all([
          BenchView.preload(),
          loadCommit(),
          import('../entry/check-text.ts'),
          import('../unfolded/draws-panel.tsx'),
        ]).catch(() => undefined),
    );
  });
  const arrival = takeArrival();
  if (arrival) notices.say(arrival);
  onMount(() => offerTyped(typing));
  noteChecks(sheet, props.shop, props.opened.id);
  onMount(() => whenIdle(() => void keepOnOpening(props.shop, props.opened).catch(() => undefined)));

  return (
    <SheetProvider value={{ sheet, cursor, notices, show, chain, adding, locked, goTo }}>
      <ToolsProvider value={tools}>
        {/* Unseen among the lines: what does not stand, and where the sheet stands, is said wherever the work is. */}
        <Show when={part() !== undefined}>
          <Show when={standing()}>
            {(draw) => <div class="w-full max-w-30rem mx-auto bg-paper [&~main]:min-h-0">{draw()()}</div>}
          </Show>
          <ConflictList />
        </Show>
        <Show when={part() === 'chain'}>
          <Suspense fallback={<p class="paper">Drawing the chain …</p>}>
            <ChainView />
          </Suspense>
        </Show>
        <Show when={part() === 'bench'}>
          <Suspense fallback={<p class="paper">One moment …</p>}>
            <BenchView />
          </Suspense>
        </Show>
        {/* The lines stay, unseen, so that the way back is at once and to the same place. */}
        <main class="paper sheet" classList={{ waits: sheet.waits() }} hidden={part() !== undefined}>
          <div class="frame">
            <Toolbar opened={props.opened} />
            <h1 class="unseen">{say(sheet.state.title.title) || 'Job sheet'}</h1>
            <Show when={props.failure}>
              <div class="trouble" role="alert">
                <p>
                  The figures could not be worked out: {props.failure} Your entries are kept. Load the page
                  again to try once more.
                </p>
              </div>
            </Show>
            <Show when={shared.latest} keyed>
              {(one) => (
                <Suspense>
                  <JoinedBar
                    opened={props.opened}
                    shop={props.shop}
                    shared={one}
                    onStanding={(draw) => setStanding(() => draw)}
                  />
                </Suspense>
              )}
            </Show>
            {standing()?.()}
            <MissingSheets shop={props.shop} />
            <TrashLine shop={props.shop} id={props.opened.id} />
            <Show when={sheet.state.order.length > MAX_LINES}>
              <Suspense>
                <OverfullLine />
              </Suspense>
            </Show>
            <ConflictList />
            <TemplateLine />
            <TitleBlock />
            <Standing />
            <Show when={tools.held.held()}>
              <Suspense>
                <HeldBar />
              </Suspense>
            </Show>
            <Show when={sheet.state.order.length > 0}>
              <HintBar />
            </Show>
            <Lines />
            <NextEntry />
            {/* On a narrow page the rare commands stand at the foot. */}
            <div class="foot hidden flex-wrap gap-2 p-3 lined-t-rule phone:flex">
              <LengthPair />
              <a class="button" href={addressOfSheet(props.opened.id, 'chain')}>
                Chain
              </a>
              <button type="button" onClick={() => void saveToFile(sheet.document)}>
                Save to a file
              </button>
              <button type="button" onClick={() => tools.show('share')}>
                Share
              </button>
              <button type="button" onClick={() => tools.show('history')}>
                History
              </button>
              <Show when={!sheet.document.template()}>
                <button type="button" onClick={() => tools.show('save-template')}>
                  Make a template
                </button>
              </Show>
              <button type="button" onClick={() => printSheet(sheet.engine)}>
                Print
              </button>
              <button type="button" onClick={() => tools.selection.setTicking(true)}>
                Choose lines
              </button>
              <button type="button" onClick={() => tools.show('preferences')}>
                Preferences
              </button>
            </div>
          </div>
        </main>
        <SheetTools />
        <NoticeBar />
        <Show when={printing() && part() !== 'chain'}>
          <Suspense>
            <PrintSheet />
          </Suspense>
        </Show>
      </ToolsProvider>
    </SheetProvider>
  );
};
