import { For } from 'solid-js';
import type { CheckName } from '../../engine/trial/checks.ts';
import { useSheet } from '../state/context.ts';

/** Checks by name, each leading to its line, with what is said of it. */
export const CheckList = (props: { checks: ReadonlyArray<CheckName & { words?: string }> }) => {
  const { sheet, goTo } = useSheet();
  return (
    <ul class="grid gap-1 empty:hidden">
      <For each={props.checks}>
        {(one) => (
          <li>
            <button
              type="button"
              class="go"
              onClick={() => goTo(one.cell, one.output === '' ? undefined : one.output)}
            >
              {checkTitle(sheet, one)}
            </button>{' '}
            {one.words}
          </li>
        )}
      </For>
    </ul>
  );
};

/** What a check is called: its line, the output where that is one of several, and in service where it is of that. */
const checkTitle = (sheet: ReturnType<typeof useSheet>['sheet'], { cell, output, as }: CheckName): string => {
  const label = output === '' ? undefined : sheet.shape(cell, output)?.label;
  const own = output === 'value' || output === '' || !label ? '' : `: ${label}`;
  return `${sheet.titleOf(cell)}${own}${as === 'service' ? ', in service' : ''}`;
};
