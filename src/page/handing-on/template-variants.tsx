import { For, Show } from 'solid-js';
import type { SheetFile } from '../../../shared/sheet/format.ts';

interface Props {
  variants: NonNullable<SheetFile['variants']>;
  /** Names of those that stay with the job. */
  left: ReadonlySet<string>;
  /** The line, and which of its entries, and what a variant says there, in words. */
  words: (at: string, text: string) => { at: string; text: string };
  onTurn: (name: string, out: boolean) => void;
}

/** Variants of a job with their figures: each goes along into the template only where its author says so. */
export const TemplateVariants = (props: Props) => (
  <Show when={props.variants.length > 0}>
    <section>
      <h3 class="text-figure">Variants tried in this job</h3>
      <ul>
        <For each={props.variants}>
          {(variant) => (
            <li class="py-1 lined-t-rule">
              <label class="along min-h-target">
                <input
                  class="tickable"
                  type="checkbox"
                  checked={!props.left.has(variant.name)}
                  onChange={(event) => props.onTurn(variant.name, !event.currentTarget.checked)}
                />
                take along <strong>{variant.name}</strong>
              </label>
              <ul class="pl-5">
                <For each={Object.entries(variant.entries)}>
                  {([at, text]) => (
                    <li>
                      {props.words(at, text).at}: <bdi>{props.words(at, text).text}</bdi>
                      <Show
                        when={!props.left.has(variant.name)}
                        fallback={<span class="caption">, left out</span>}
                      >
                        <span class="verdict doubt">
                          {' '}
                          <span class="tone">stays: a figure of this machine</span>
                        </span>
                      </Show>
                    </li>
                  )}
                </For>
              </ul>
            </li>
          )}
        </For>
      </ul>
    </section>
  </Show>
);
