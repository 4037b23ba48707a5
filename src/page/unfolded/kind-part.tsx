import { For, Show, Suspense } from 'solid-js';
import { late } from '../kit/late.tsx';
import { Part } from '../kit/part.tsx';
import { addressInBook } from '../kit/router.ts';
import { TextField } from '../kit/text-field.tsx';
import { useSheet } from '../state/context.ts';
import { useLibrary } from '../state/library.ts';
import { FeedLinks } from './feed-links.tsx';
import { WayField } from './way-field.tsx';

const OwnPart = late('What the shop keeps', () => import('./own-part.tsx'));

/** The rest of a library cell laid open: its label, what it takes for granted, and where it comes from. */
export const KindPart = (props: { cell: string }) => {
  const { sheet } = useSheet();
  const library = useLibrary();
  const record = () => sheet.line(props.cell)!.record;
  const kind = () => library()?.kinds.get(record().kind ?? '');
  return (
    <div class="parts">
      <Part title="The line">
        <div class="fields">
          <TextField
            label="Label"
            value={record().label}
            aside={{ sheet: sheet.document.id, cell: props.cell, field: 'label' }}
            onCommit={(text) => sheet.document.setField(props.cell, 'label', text)?.message}
          />
          <TextField
            label="Name in formulas"
            draft={`${location.hash} ${props.cell} name`}
            value={record().name}
            aside={{ sheet: sheet.document.id, cell: props.cell, field: 'name' }}
            onCommit={(text) => sheet.document.renameCell(props.cell, text)?.message}
          />
          <WayField cell={props.cell} record={record()} />
        </div>
        <Show when={kind()?.inputs.some(({ ofShop }) => ofShop)}>
          <Suspense>
            <OwnPart cell={props.cell} />
          </Suspense>
        </Show>
      </Part>
      <FeedLinks cell={props.cell} />
      <Show when={kind()}>
        {(k) => (
          <div class="grid gap-2">
            <Part title="Taken for granted">
              <ul class="dash-list">
                <For each={k().assumptions}>{(text) => <li>{text}</li>}</For>
              </ul>
            </Part>
            <Part title="Sources">
              <ul class="dash-list">
                <For each={k().sources}>{(text) => <li>{text}</li>}</For>
                <For each={k().inputs.filter((input) => input.source)}>
                  {(input) => (
                    <li>
                      {input.label}: {input.source}
                    </li>
                  )}
                </For>
              </ul>
            </Part>
            <p class="caption">
              <a href={addressInBook(k().key)}>{k().title} in the cell book</a>, edition {k().edition}
            </p>
          </div>
        )}
      </Show>
    </div>
  );
};
