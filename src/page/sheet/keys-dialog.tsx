import { For } from 'solid-js';
import { Dialog } from '../kit/dialog.tsx';
import type { Command } from '../state/command.ts';

/** Every key there is, under what it is about; read from the list of commands. */
export default function KeysDialog(props: { commands: readonly Command[]; onClose: () => void }) {
  const keyed = () => props.commands.filter((command) => command.keys);
  const groups = () => [...new Set(keyed().map(({ group }) => group))];
  return (
    <Dialog title="Keys" class="keys" onClose={props.onClose}>
      <For each={groups()}>
        {(group) => (
          <section>
            <h3 class="text-plain lined-b">{group}</h3>
            <dl>
              <For each={keyed().filter((command) => command.group === group)}>
                {(command) => (
                  <div class="grid grid-cols-[minmax(9rem,1fr)_2fr] gap-3 py-2px lined-b-rule">
                    <dt class="flex flex-wrap gap-x-1 gap-y-2px">
                      <For each={command.keys}>
                        {(key) => <kbd class="[font:inherit] text-small px-1 lined">{key}</kbd>}
                      </For>
                    </dt>
                    <dd>{command.label}</dd>
                  </div>
                )}
              </For>
            </dl>
          </section>
        )}
      </For>
      <p>
        In an entry, <kbd class="[font:inherit] text-small px-1 lined">Tab</kbd> takes what is offered: a
        name, a unit, and behind a reading the next one by its last digits, <bdi>1.7481; 79</bdi> as{' '}
        <bdi>1.7481; 1.7479</bdi>.
      </p>
      <p class="caption">On a Mac, Command stands for Ctrl.</p>
    </Dialog>
  );
}
