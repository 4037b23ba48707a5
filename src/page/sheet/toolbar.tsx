import { Show } from 'solid-js';
import type { OpenSheet } from '../../document/storage/open-sheet.ts';
import { addressOfSheet } from '../kit/router.ts';
import { printSheet } from '../print/load.ts';
import { useSheet } from '../state/context.ts';
import { saveToFile } from '../state/save-file.ts';
import { useTools } from '../state/tools.ts';
import { LengthPair } from './length-pair.tsx';
import './toolbar.css';
import { createStorageState } from '../state/storage-state.ts';

const WORDS = {
  saved: 'saved',
  saving: 'saving …',
  unsaved: 'not saved',
  refused: 'not saved',
  full: 'not saved',
} as const;

/** Takes a step back or does it again, and says which. */
const StepButton = (props: { word: string; keys: string; step: string | undefined; onClick: () => void }) => {
  const which = () => (props.step ? `: ${props.step}` : '');
  return (
    <button
      type="button"
      class="undo"
      disabled={!props.step}
      title={props.keys}
      aria-label={props.word + which()}
      onClick={() => props.onClick()}
    >
      {props.word}
      <span class="rare">{which()}</span>
    </button>
  );
};

/** What concerns the whole sheet. */
export const Toolbar = (props: { opened: OpenSheet }) => {
  const { sheet, notices } = useSheet();
  const { show } = useTools();
  const storage = createStorageState(props.opened);
  const said = (what: string, label: string | undefined) => label && notices.say(`${what}: ${label}.`);
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
        <a class="part-link" href={addressOfSheet(props.opened.id, 'bench')}>
          At the machine
        </a>
        <a class="rare part-link" href={addressOfSheet(props.opened.id, 'chain')}>
          Chain
        </a>
        <span class="grow" />
        <span class="saved-state" classList={{ amiss: WORDS[storage().state] === 'not saved' }} role="status">
          {WORDS[storage().state]}
        </span>
        <div class="rare">
          <LengthPair />
        </div>
        <button type="button" class="rare" onClick={() => saveToFile(sheet.document)}>
          Save to a file
        </button>
        <button type="button" class="rare" onClick={() => show('share')}>
          Hand on
        </button>
        <button type="button" class="rare" onClick={() => show('history')}>
          History
        </button>
        <Show when={!sheet.document.template()}>
          <button type="button" class="rare" onClick={() => show('save-template')}>
            Make a template
          </button>
        </Show>
        <button type="button" class="rare" onClick={printSheet}>
          Print
        </button>
        <button type="button" class="rare" onClick={() => show('preferences')}>
          Preferences
        </button>
      </div>
      <Show when={storage().message}>
        {(message) => (
          <div class="trouble" role="alert">
            <p>{message()}</p>
            <button type="button" class="main" onClick={() => saveToFile(sheet.document)}>
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
