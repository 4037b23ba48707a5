import { createEffect, createSignal, on, onCleanup } from 'solid-js';
import { leading } from '../kit/check-words.ts';
import { useSheet } from '../state/context.ts';
import { type ChangedCheck, wordChanges } from './changes.ts';

/** What comes within this time of the last change is said together, ms. */
const QUIET = 700;

/** Reads out which checks changed: politely, and one sentence for everything an edit moved. */
export const Announcer = () => {
  const { sheet } = useSheet();
  const [said, setSaid] = createSignal('');
  let timer: ReturnType<typeof setTimeout> | undefined;
  const changes = (): ChangedCheck[] =>
    sheet.state.order.flatMap((id) => {
      const line = sheet.line(id);
      return Object.entries(line?.moved ?? {}).flatMap(([name, move]) => {
        const output = line?.result?.outputs[name];
        if (!move.check || !output) return [];
        const title = name === 'value' ? sheet.titleOf(id) : `${sheet.titleOf(id)}, ${output.label ?? name}`;
        return [{ title, from: move.check, to: leading(output.check).state }];
      });
    });
  createEffect(
    on(
      () => sheet.state.rev,
      () => {
        clearTimeout(timer);
        timer = setTimeout(() => setSaid(wordChanges(changes())), QUIET);
      },
      { defer: true },
    ),
  );
  onCleanup(() => clearTimeout(timer));
  return (
    <div class="unseen" aria-live="polite" data-announcer>
      {said()}
    </div>
  );
};
