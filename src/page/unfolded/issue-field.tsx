import { Show } from 'solid-js';
import { writeEntry } from '../../../shared/quantities/figures.ts';
import { EntryField } from '../entry/entry-field.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { inUsualUnits, writtenOut } from '../kit/decimal-mark.ts';
import { Part } from '../kit/part.tsx';
import { useSheet } from '../state/context.ts';

/** Sends a size to the machine: from then on re-planning does not move it. */
export const IssueField = (props: { cell: string; spot: EntrySpot }) => {
  const { sheet, show } = useSheet();
  const issued = () => sheet.line(props.cell)?.record.issued;
  const planned = () => sheet.line(props.cell)?.result?.outputs.value?.planned;
  /** The size as it stands on the paper: what is shown, not the digits behind it. */
  const sizeToIssue = () => {
    const figure = planned();
    if (!figure) return undefined;
    const at = show.output(props.cell, 'value');
    const text = at.number(figure.value, figure).replaceAll('\u00a0', ' ').replace(',', '.');
    return Number.isFinite(Number(text))
      ? `${text} ${at.unit.symbol}`.trim()
      : writeEntry(figure.value, at.unit.symbol);
  };
  return (
    <Part title="Released to cut" open={issued() !== undefined}>
      <Show
        when={issued()}
        fallback={
          <Show
            when={sizeToIssue()}
            fallback={<p class="caption">A size can be released once it is worked out.</p>}
          >
            {(size) => (
              <button type="button" onClick={() => sheet.document.setField(props.cell, 'issued', size())}>
                Release to cut at {inUsualUnits(writtenOut(size()), sheet.state.units.tenth)}
              </button>
            )}
          </Show>
        }
      >
        <div class="fields">
          <EntryField label="Released size" spot={props.spot} value={issued()} />
          <button type="button" onClick={() => sheet.document.setField(props.cell, 'issued', undefined)}>
            Withdraw
          </button>
        </div>
      </Show>
    </Part>
  );
};
