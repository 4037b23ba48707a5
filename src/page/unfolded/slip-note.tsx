import { Show } from 'solid-js';
import type { Slip } from '../../engine/results.ts';
import { writtenOut } from '../preferences/decimal-mark.ts';
import { useSheet } from '../sheet/context.ts';

/** A question about an entry that reads well but may not be what was meant. Nothing changes until it is answered. */
export const SlipNote = (props: { slip: Slip; cell: string }) => {
  const { sheet } = useSheet();
  const text = () => {
    const record = sheet.line(props.cell)?.record;
    const [head, name, ...rest] = props.slip.field.split('.');
    if (!record) return '';
    if (head === 'inputs' && name) return record.inputs?.[name] ?? '';
    if (head === 'outputs' && name) return record.outputs?.[name]?.measured?.entry ?? '';
    if (head === 'measured') return record.measured?.entry ?? '';
    if (head === 'limits' && name && rest.length === 0) return String(record.limits?.[name as 'lower'] ?? '');
    return String((record as unknown as Record<string, unknown>)[props.slip.field] ?? '');
  };
  const dismiss = () => {
    const dismissed = sheet.line(props.cell)?.record.dismissed ?? [];
    sheet.document.setField(props.cell, 'dismissed', [
      ...dismissed.map((d) => ({ ...d })),
      { slip: props.slip.key, text: text() },
    ]);
  };
  return (
    <div class="slip" role="note">
      <span>{props.slip.message}</span>
      <div class="actions">
        <Show when={props.slip.offer}>
          {(offer) => (
            <button
              type="button"
              onClick={() => sheet.document.setField(props.cell, props.slip.field, offer())}
            >
              take {writtenOut(offer())}
            </button>
          )}
        </Show>
        <button type="button" onClick={dismiss}>
          {text() ? `${writtenOut(text())} is right` : 'it is right'}
        </button>
      </div>
    </div>
  );
};
