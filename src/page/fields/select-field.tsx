import { createUniqueId, For } from 'solid-js';
import './fields.css';

export interface SelectFieldProps {
  label: string;
  value: string;
  options: ReadonlyArray<{ value: string; label: string }>;
  onCommit: (value: string) => void;
  disabled?: boolean;
}

export const SelectField = (props: SelectFieldProps) => {
  const id = createUniqueId();
  return (
    <div class="field">
      <label for={id}>{props.label}</label>
      <select
        id={id}
        value={props.value}
        disabled={props.disabled}
        onChange={(event) => props.onCommit(event.currentTarget.value)}
      >
        <For each={props.options}>
          {(option) => (
            <option value={option.value} selected={option.value === props.value}>
              {option.label}
            </option>
          )}
        </For>
      </select>
    </div>
  );
};
