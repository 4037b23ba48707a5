import { For } from 'solid-js';
import { Dialog } from '../kit/dialog.tsx';
import type { Command } from '../state/command.ts';
import './keys-dialog.css';

/** Every key there is, under what it is about; read from the list of commands. */
export default function KeysDialog(props: { commands: readonly Command[]; onClose: () => void }) {
  const keyed = () => props.commands.filter((command) => command.keys);
  const groups = () => [...new Set(keyed().map(({ group }) => group))];
  return (
    <Dialog title="Keys" class="keys" onClose={props.onClose}>
      <For each={groups()}>
        {(group) => (
          <section>
            <h3>{group}</h3>
            <dl>
              <For each={keyed().filter((command) => command.group === group)}>
                {(command) => (
                  <div>
                    <dt>
                      <For each={command.keys}>{(key) => <kbd>{key}</kbd>}</For>
                    </dt>
                    <dd>{command.label}</dd>
                  </div>
                )}
              </For>
            </dl>
          </section>
        )}
      </For>
      <p class="caption">On a Mac, Command stands for Ctrl.</p>
    </Dialog>
  );
}
