import { For, Match, Switch } from 'solid-js';
import { writtenOut } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';

/** A formula that may lead back to its line: of an input of a library cell with the label of that. */
interface Formula {
  label: string;
  text: string;
}

const NAME_ALONE = /^=\s*[\p{L}_][\p{L}\p{N}_.]*$/u;
const isFormula = (text: string | undefined): text is string => text?.trimStart().startsWith('=') === true;

/** A size whose formula leads back to it: has it solved, or says what it is solved for. Shown where a ring is, solved or not. */
const RingPart = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const library = useLibrary();
  const record = () => sheet.line(props.cell)!.record;
  const formulas = (): Formula[] => {
    const { role, entry, inputs, kind } = record();
    if (role !== 'cell')
      return role !== 'measured' && isFormula(entry)
        ? [{ label: sheet.titleOf(props.cell), text: entry }]
        : [];
    return Object.entries(inputs ?? {})
      .filter(([, text]) => isFormula(text) && !NAME_ALONE.test(text.trim()))
      .map(([name, text]) => ({
        label:
          library()
            ?.kinds.get(kind ?? '')
            ?.inputs.find((one) => one.name === name)?.label ?? name,
        text,
      }));
  };
  const set = (solved: true | undefined) => sheet.document.setField(props.cell, 'solved', solved);
  return (
    <Switch>
      <Match when={formulas().length > 0 && record().solved}>
        <p class="along">
          <span>
            Solved so that{' '}
            <For each={formulas()}>
              {({ label, text }, i) => (
                <>
                  {i() > 0 ? ', or ' : ''}
                  <b>{label}</b> comes to <code>{writtenOut(text.replace(/^\s*=\s*/, ''))}</code>
                </>
              )}
            </For>
            , though that depends on it.
          </span>
          <button type="button" onClick={() => set(undefined)}>
            Do not solve it
          </button>
        </p>
      </Match>
      <Match when={formulas().length > 0}>
        <p class="along">
          <span>Its formula leads back to it. One size may come out as it goes in:</span>
          <button type="button" onClick={() => set(true)}>
            Solve it here
          </button>
        </p>
      </Match>
    </Switch>
  );
};

export default RingPart;
