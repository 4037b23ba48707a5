import { createSignal, createUniqueId, For, Show } from 'solid-js';
import type { Problem } from '../../../shared/problem.ts';
import { inUsualUnits, writtenOut } from '../kit/decimal-mark.ts';
import { isPointerDown } from '../kit/pointer.ts';
import { onResume } from '../kit/typed-aside.ts';
import { useSheet } from '../state/context.ts';
import { commitTyped, type Typed } from './commit-typed.ts';
import { EntryEditor } from './entry-editor.tsx';
import { ProblemNote } from './problem-note.tsx';
import type { EntrySpot } from './spot.ts';

export interface EntryFieldProps {
  label: string;
  spot: EntrySpot;
  value: string | undefined;
  placeholder?: string;
  hint?: string;
  disabled?: boolean;
  onCommit?: (text: string) => void;
}

/** An entry or formula as a field of a form: text until it has the focus, then the editor. */
export const EntryField = (props: EntryFieldProps) => {
  const { sheet } = useSheet();
  const id = createUniqueId();
  const [editing, setEditing] = createSignal(false);
  /** What was typed here before, to go on with. */
  const [start, setStart] = createSignal<string>();
  let rest: HTMLInputElement | undefined;
  let resting = false;

  const shown = () =>
    inUsualUnits(
      writtenOut(props.value ?? '', props.spot.kind === 'tolerance' ? 'Cut' : undefined),
      sheet.state.units.tenth,
    );
  /** Back to the text, with the focus on it but without starting anew. */
  const settle = (byKey: boolean) => {
    setStart(undefined);
    resting = byKey;
    if (byKey) rest?.focus();
    resting = false;
  };
  const commit = (typed: Omit<Typed, 'leave'>) => {
    const leave = () => {
      setEditing(false);
      settle(typed.byKey);
    };
    if (!props.onCommit) {
      commitTyped(sheet, props.spot, { ...typed, leave });
      return;
    }
    leave();
    const { text, meanwhile } = typed;
    const { cell, field } = props.spot;
    const take = () => props.onCommit?.(text ?? '');
    if (text === undefined) return;
    if (meanwhile === undefined || meanwhile === text) take();
    else sheet.conflicts.add({ cell, field, mine: text, theirs: meanwhile, enter: take });
  };
  /** Heard on the way down, for a key struck right behind an entry was on its way to the editor, which is gone by now. */
  const begin = (event: KeyboardEvent) => {
    if (!rest || document.activeElement !== rest) return;
    if (event.key === 'Enter' || event.key === 'F2') {
      event.preventDefault();
      setEditing(true);
    } else if (event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey) {
      setEditing(true);
    }
  };
  // What is typed for a question of its own belongs to no text of the sheet.
  onResume(
    () => (props.onCommit ? undefined : props.spot),
    (text) => {
      const folded = rest?.closest('details');
      if (folded) folded.open = true;
      setStart(text);
      setEditing(true);
    },
  );
  const problems = (): Problem[] =>
    (sheet.line(props.spot.cell)?.shape?.problems ?? []).filter(({ field }) => field === props.spot.field);

  return (
    <div class="field" data-field={props.spot.field} on:keydown={{ capture: true, handleEvent: begin }}>
      <label for={id} class="caption">
        {props.label}
      </label>
      <Show
        when={editing()}
        fallback={
          <input
            id={id}
            ref={(element) => {
              rest = element;
            }}
            value={shown()}
            placeholder={props.placeholder}
            disabled={props.disabled}
            readonly
            onFocus={() => {
              // Under the pointer the click begins: taken away while pressed, the field would lose it.
              if (!resting && !isPointerDown()) setEditing(true);
            }}
            onClick={() => setEditing(true)}
          />
        }
      >
        <EntryEditor
          spot={props.spot}
          text={start() ?? shown()}
          stands={shown()}
          label={props.label}
          isAnswer={props.onCommit !== undefined}
          onCommit={commit}
          onLeave={() => {
            setEditing(false);
            settle(true);
          }}
        />
      </Show>
      <Show when={props.hint}>
        <span class="hint caption">{props.hint}</span>
      </Show>
      <For each={problems()}>{(problem) => <ProblemNote problem={problem} cell={props.spot.cell} />}</For>
    </div>
  );
};
