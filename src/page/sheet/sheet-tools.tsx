import { Match, onCleanup, onMount, Suspense, Switch } from 'solid-js';
import { hearSelection } from '../grid/keys.ts';
import { listenToClipboard } from '../grid/listen.ts';
import { whenIdle } from '../kit/idle.ts';
import { lateDialog } from '../kit/late-dialog.tsx';
import { useSheet } from '../state/context.ts';
import { focusWork } from '../state/focus-work.ts';
import { hearKeys } from '../state/hear.ts';
import { keepFocus } from '../state/keep-focus.ts';
import { useTools } from '../state/tools.ts';
import { Announcer } from './announcer.tsx';
import { commandList } from './list.ts';
import { SelectionBar } from './selection-bar.tsx';

const Finder = lateDialog('The finder', () => import('./finder.tsx'));
const KeysDialog = lateDialog('The list of keys', () => import('./keys-dialog.tsx'));
const ShareDialog = lateDialog('Sharing', () => import('../handing-on/share-dialog.tsx'));
const HistoryDialog = lateDialog('The history', () => import('../handing-on/history-dialog.tsx'));
const TemplateDialog = lateDialog(
  'The comparison with the template',
  () => import('../handing-on/template-dialog.tsx'),
);
const SaveTemplate = lateDialog('Saving as a template', () => import('../handing-on/save-template.tsx'));
const PreferencesDialog = lateDialog('The preferences', () => import('../kit/preferences-dialog.tsx'));

/** What works on the whole sheet beside its lines: keys, clipboard, chosen lines, what lies over it, what is read out. */
export const SheetTools = () => {
  const context = useSheet();
  const tools = useTools();
  const commands = commandList(context, tools);
  const hide = () => {
    tools.hide();
    // Behind the dialog's own way back, which leads nowhere where an open entry was left for it.
    queueMicrotask(() => focusWork(context));
  };
  // There before it is asked for: what is typed after its key must not go to the line under the cursor.
  onMount(() => whenIdle(() => void Finder.preload().catch(() => undefined)));
  onCleanup(keepFocus(context));
  onCleanup(hearKeys(commands));
  onCleanup(hearSelection(context, tools.selection));
  onCleanup(listenToClipboard(context, tools.selection));
  return (
    <>
      <SelectionBar />
      <Announcer />
      <Suspense>
        <Switch>
          <Match when={tools.overlay() === 'finder'}>
            <Finder commands={commands} onClose={hide} />
          </Match>
          <Match when={tools.overlay() === 'keys'}>
            <KeysDialog commands={commands} onClose={hide} />
          </Match>
          <Match when={tools.overlay() === 'preferences'}>
            <PreferencesDialog onClose={hide} />
          </Match>
          <Match when={tools.overlay() === 'share'}>
            <ShareDialog onClose={hide} />
          </Match>
          <Match when={tools.overlay() === 'history'}>
            <HistoryDialog opened={tools.opened} shop={tools.shop} onClose={hide} />
          </Match>
          <Match when={tools.overlay() === 'template'}>
            <TemplateDialog onClose={hide} />
          </Match>
          <Match when={tools.overlay() === 'save-template'}>
            <SaveTemplate onClose={hide} />
          </Match>
        </Switch>
      </Suspense>
    </>
  );
};
