import { createMemo, createUniqueId, For } from 'solid-js';
import { createKept } from './keep-equal.ts';

export interface SelectFieldProps {
  label: string;
  value: string;
  options: ReadonlyArray<{ value: string; label: string }>;
  onCommit: (value: string) => void;
  disabled?: boolean;
}

export const SelectField = (props: SelectFieldProps) => {
  const id = createUniqueId();
  // What they are made from changes with every edit of the line; they themselves seldom do.
  const value = createMemo(() => props.value);
  const options = createKept<SelectFieldProps['options']>(() => [...props.options], []);
  return (
    <div class="field">
      <label for={id} class="caption">
        {props.label}
      </label>
      <select
        id={id}
        value={value()}
        disabled={props.disabled}
        onChange={(event) => props.onCommit(event.currentTarget.value)}
      >
        <For each={options()}>
          {(option) => (
            <option value={option.value} selected={option.value === value()}>
              {option.label}
            </option>
          )}
        </For>
      </select>
    </div>
  );
};
