import { Show } from 'solid-js';
import { RULE_WORDS } from '../../../shared/checks/decision-rules.ts';
import type { DecisionRule, Limits } from '../../../shared/sheet/format.ts';
import { EntryField } from '../entry/entry-field.tsx';
import type { EntrySpot } from '../entry/spot.ts';
import { writtenOut } from '../kit/decimal-mark.ts';
import { Part } from '../kit/part.tsx';
import { SelectField } from '../kit/select-field.tsx';
import { wantedLimits } from '../state/asked.ts';
import { useSheet } from '../state/context.ts';

export interface LimitFieldsProps {
  cell: string;
  /** `limits`, or `outputs.NAME.limits`. */
  path: string;
  limits: Limits | undefined;
  spot: (field: string) => EntrySpot;
  locked: boolean;
}

/** Limits, the wear limit, on which side a miss can still be worked, and the rule of this line. */
export const LimitFields = (props: LimitFieldsProps) => {
  const { sheet } = useSheet();
  const set = (field: string, value: string) =>
    sheet.document.setField(props.cell, `${props.path}.${field}`, value || undefined);
  const wanted = () => wantedLimits(props.limits).length > 0;
  const amiss = () =>
    sheet.line(props.cell)?.shape?.problems.some(({ field }) => field?.startsWith(`${props.path}.`));
  const entry = (field: 'lower' | 'upper' | 'wear', label: string) => {
    const example = () => (props.limits?.[field] ? undefined : props.limits?.[`${field}Example`]);
    return (
      <div class="grid gap-1">
        <EntryField
          label={label}
          spot={props.spot(`${props.path}.${field}`)}
          value={props.limits?.[field]}
          // One that the template asks for is not the author's to lock.
          disabled={props.locked && props.limits?.[`${field}Example`] === undefined}
          {...(example() !== undefined && { placeholder: `to be filled in, e.g. ${writtenOut(example()!)}` })}
        />
        <Show when={example() !== undefined}>
          <button type="button" class="plain" onClick={() => set(`${field}Example`, '')}>
            This machine has no {label.toLowerCase()}
          </button>
        </Show>
      </div>
    );
  };
  return (
    <Part title={props.locked ? 'Limits, locked' : 'Limits'} open={amiss() || wanted()}>
      <div class="fields">
        {entry('lower', 'Lower limit')}
        {entry('upper', 'Upper limit')}
        {entry('wear', 'Wear limit')}
        <SelectField
          label="Can still be cut while"
          value={props.limits?.metalOn ?? ''}
          disabled={props.locked}
          options={[
            { value: '', label: 'not said' },
            { value: 'low', label: 'small (a bore)' },
            { value: 'high', label: 'large (a shaft)' },
          ]}
          onCommit={(value) => set('metalOn', value)}
        />
        <SelectField
          label="Judged by"
          value={props.limits?.rule ?? ''}
          options={[
            { value: '', label: 'the rule of the sheet' },
            ...(Object.entries(RULE_WORDS) as Array<[DecisionRule, string]>).map(([value, label]) => ({
              value,
              label,
            })),
          ]}
          onCommit={(value) => set('rule', value)}
        />
      </div>
    </Part>
  );
};
