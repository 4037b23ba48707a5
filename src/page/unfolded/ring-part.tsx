import { Match, Switch } from 'solid-js';
import { writtenOut } from '../kit/decimal-mark.ts';
import { useSheet } from '../state/context.ts';

/** A size whose formula leads back to it: has it solved, or says what it is solved for. */
export const RingPart = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const record = () => sheet.line(props.cell)!.record;
  const isFormula = () => record().role === 'chosen' && record().entry?.trimStart().startsWith('=') === true;
  const isRing = () => sheet.shape(props.cell, 'value')?.problem?.kind === 'ring';
  const set = (solved: true | undefined) => sheet.document.setField(props.cell, 'solved', solved);
  return (
    <Switch>
      <Match when={isFormula() && record().solved}>
        <p class="along">
          <span>
            Solved so that <b>{sheet.titleOf(props.cell)}</b> comes to{' '}
            <code>{writtenOut(record().entry!.replace(/^\s*=\s*/, ''))}</code>, though that depends on it.
          </span>
          <button type="button" onClick={() => set(undefined)}>
            Do not solve it
          </button>
        </p>
      </Match>
      <Match when={isFormula() && isRing()}>
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
