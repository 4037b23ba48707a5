import { createMemo, createSignal, For, Show } from 'solid-js';
import { fieldWords, sheetFieldWords } from '../../../shared/sheet/field-words.ts';
import { numberLines } from '../../../shared/sheet/numbering.ts';
import { type Mark, markable, markOf, withMarks } from '../../document/sharing/template-marks.ts';
import { type Emptied, templateOf } from '../../document/template.ts';
import { Dialog } from '../kit/dialog.tsx';
import { addressOfSheet, go } from '../kit/router.ts';
import { useSheet } from '../state/context.ts';
import { useTools } from '../state/tools.ts';
import { cellTitle } from './differences-list.tsx';

import { useReadInputs } from './read-inputs.ts';

/** A template from this job: what it leaves out is shown first, and its author says what the next one fills in. */
export default function SaveTemplate(props: { onClose: () => void }) {
  const { sheet, notices } = useSheet();
  const tools = useTools();
  const job = sheet.document.toFile();
  const isRead = useReadInputs();
  const made = createMemo(() => templateOf(job, isRead));
  const [title, setTitle] = createSignal(made().file.title.title);
  const [marks, setMarks] = createSignal<ReadonlyMap<string, Mark>>(
    new Map(
      made()
        .file.cells.filter(markable)
        .map((cell) => [cell.id, markOf(cell)]),
    ),
  );
  const numbers = numberLines(
    made().file.cells.map(({ id }) => id),
    (id) => made().file.cells.find((cell) => cell.id === id)?.role,
  );
  /** A template of one's own by that name, to be brought up to this. */
  const present = createMemo(() =>
    tools.shop
      .list()
      .find((row) => row.template && row.removed === undefined && row.title.title === title().trim()),
  );
  const mark = (id: string, change: Partial<Mark>) => {
    const before = marks().get(id)!;
    setMarks(new Map(marks()).set(id, { ...before, ...change }));
  };
  const nameOf = ({ id, field }: Emptied) => {
    const cell = job.cells.find((one) => one.id === id);
    return cell ? `${cellTitle(cell)}, ${fieldWords(field)}` : sheetFieldWords(field);
  };
  const file = () => {
    const all = withMarks(made().file, marks());
    return { ...all, title: { ...all.title, title: title().trim() || 'Template' } };
  };
  const saveNew = async () => {
    const id = await tools.shop.create(file());
    notices.say('The template is kept under “own templates”.', {
      label: 'Open it',
      run: () => go(addressOfSheet(id)),
    });
    props.onClose();
  };
  const saveOver = async (id: string) => {
    const template = await tools.shop.open(id);
    if (!('document' in template)) {
      notices.say(template.message);
      return;
    }
    await tools.shop.revise(id, 'before it was brought up to a job');
    template.document.become(file(), 'brought up to a job');
    await template.close();
    notices.say('The template is brought up to this job. What it said before is in its history.');
    props.onClose();
  };
  return (
    <Dialog
      title="Save as a template"
      class="save-template w-[min(56rem,calc(100vw-2*var(--s2)))]"
      onClose={props.onClose}
    >
      <p>Labels, formulas, limits, sources and notes are kept. This job stays as it is.</p>
      <div class="field">
        <label for="template-title" class="caption">
          Title of the template
        </label>
        <input
          id="template-title"
          value={title()}
          autocomplete="off"
          onInput={(event) => setTitle(event.currentTarget.value)}
        />
      </div>
      <section>
        <h3 class="text-figure">
          Left out:{' '}
          {made().emptied.length === 0
            ? 'nothing'
            : made().emptied.length === 1
              ? 'one entry'
              : `${made().emptied.length} entries`}
        </h3>
        <Show when={made().emptied.length > 0}>
          <ul class="max-h-12rem overflow-auto [columns:2_18rem] [&>li]:(wrap-anywhere [break-inside:avoid]) phone:max-h-none">
            <For each={made().emptied}>
              {(one) => (
                <li>
                  {nameOf(one)}: <bdi>{one.text}</bdi>
                </li>
              )}
            </For>
          </ul>
          <p class="caption">
            Readings that are left out stay as examples, shown until the next user enters their own.
          </p>
        </Show>
      </section>
      <section>
        <h3 class="text-figure">What the next user fills in, and what is locked</h3>
        {/* The dialog scrolls on a phone: lists in it are whole. */}
        <div class="rows-box phone:max-h-none">
          <table class="long-rows">
            <thead>
              <tr>
                <th scope="col">No.</th>
                <th scope="col">To fill in</th>
                <th scope="col">Locked</th>
                <th scope="col">Line</th>
                <th scope="col" class="phone:hidden">
                  Entry
                </th>
              </tr>
            </thead>
            <tbody>
              <For each={made().file.cells.filter(markable)}>
                {(cell) => (
                  <tr>
                    <td>{numbers.get(cell.id)}</td>
                    <For each={['fill', 'locked'] as const}>
                      {(what) => (
                        <td>
                          <label class="tick">
                            <input
                              type="checkbox"
                              checked={marks().get(cell.id)?.[what]}
                              aria-label={`${cellTitle(cell)}: ${what === 'fill' ? 'to fill in' : 'locked'}`}
                              onChange={(event) => mark(cell.id, { [what]: event.currentTarget.checked })}
                            />
                          </label>
                        </td>
                      )}
                    </For>
                    <td>{cellTitle(cell)}</td>
                    <td class="phone:hidden">
                      {cell.entry ?? cell.kind ?? (cell.example ? `e.g. ${cell.example}` : '')}
                    </td>
                  </tr>
                )}
              </For>
            </tbody>
          </table>
        </div>
        <p class="caption">A locked line can be unlocked; the sheet then says where it departs.</p>
      </section>
      <div class="buttons">
        <Show when={present()}>
          {(row) => (
            <button type="button" class="main" onClick={() => void saveOver(row().id)}>
              Bring the template of this name up to it
            </button>
          )}
        </Show>
        <button type="button" class={present() ? '' : 'main'} onClick={() => void saveNew()}>
          Save the template
        </button>
      </div>
    </Dialog>
  );
}
