import { Show } from 'solid-js';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import { addressOfSheet } from '../kit/router.ts';
import { printSheet } from '../print/load.ts';
import { useSheet } from '../state/context.ts';
import { focusWork } from '../state/focus-work.ts';
import { saveToFile } from '../state/save-file.ts';
import { createStorageState } from '../state/storage-state.ts';
import { useTools } from '../state/tools.ts';
import { LengthPair } from './length-pair.tsx';

const WORDS = {
  saved: 'saved',
  saving: 'saving …',
  unsaved: 'not saved',
  refused: 'not saved',
  full: 'not saved',
} as const;

const isUnsaved = (state: keyof typeof WORDS): boolean => state !== 'saved' && state !== 'saving';

/** Takes a step back or does it again, and says which. */
const StepButton = (props: { word: string; keys: string; step: string | undefined; onClick: () => void }) => {
  const which = () => (props.step ? `: ${props.step}` : '');
  return (
    <button
      type="button"
      class="undo max-w-16rem overflow-hidden text-ellipsis whitespace-nowrap phone:max-w-7.5rem [.undo+&]:disabled:phone:hidden"
      disabled={!props.step}
      title={props.keys}
      aria-label={props.word + which()}
      onClick={() => props.onClick()}
    >
      {props.word}
      {/* What it takes back is said when it has been; where there is room, before. */}
      <span class="bars:hidden">{which()}</span>
    </button>
  );
};

/** What concerns the whole sheet. */
export const Toolbar = (props: { opened: OpenSheet }) => {
  const context = useSheet();
  const { sheet, notices } = context;
  const { show } = useTools();
  const storage = createStorageState(props.opened);
  const said = (what: string, label: string | undefined) => {
    if (label) notices.say(`${what}: ${label}.`);
    // With the last step the button that was pressed can be pressed no more.
    queueMicrotask(() => focusWork(context));
  };
  return (
    <>
      <div class="toolbar" role="toolbar" aria-label="Sheet">
        <a class="to-jobs" href="#/">
          All jobs
        </a>
        <StepButton
          word="Undo"
          keys="Ctrl+Z"
          step={sheet.state.undo}
          onClick={() => said('Taken back', sheet.document.undo())}
        />
        <StepButton
          word="Redo"
          keys="Ctrl+Shift+Z"
          step={sheet.state.redo}
          onClick={() => said('Done again', sheet.document.redo())}
        />
        <button type="button" title="F9" onClick={() => show('finder')}>
          Find
        </button>
        <a class="tall-link" href={addressOfSheet(props.opened.id, 'bench')}>
          At the machine
        </a>
        <a class="tall-link phone:hidden" href={addressOfSheet(props.opened.id, 'chain')}>
          Chain
        </a>
        <span class="flex-1" />
        <span
          class="saved-state caption"
          classList={{ 'text-misses font-bold': isUnsaved(storage().state) }}
          role="status"
        >
          {WORDS[storage().state]}
        </span>
        <div class="phone:hidden">
          <LengthPair />
        </div>
        <button type="button" class="phone:hidden" onClick={() => void saveToFile(sheet.document)}>
          Save to a file
        </button>
        <button type="button" class="phone:hidden" onClick={() => show('share')}>
          Share
        </button>
        <button type="button" class="phone:hidden" onClick={() => show('history')}>
          History
        </button>
        <Show when={!sheet.document.template()}>
          <button type="button" class="phone:hidden" onClick={() => show('save-template')}>
            Make a template
          </button>
        </Show>
        <button type="button" class="phone:hidden" onClick={() => printSheet(sheet.engine)}>
          Print
        </button>
        <button type="button" class="phone:hidden" onClick={() => show('preferences')}>
          Preferences
        </button>
      </div>
      <Show when={storage().message}>
        {(message) => (
          <div class="trouble" role="alert">
            <p>{message()}</p>
            <button type="button" class="main" onClick={() => void saveToFile(sheet.document)}>
              Save to a file
            </button>
            <button type="button" onClick={() => void props.opened.retry()}>
              Try again
            </button>
          </div>
        )}
      </Show>
    </>
  );
};
