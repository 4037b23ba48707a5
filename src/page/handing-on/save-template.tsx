import { createMemo, createSignal, For, Show, untrack } from 'solid-js';
import { fieldWords, sheetFieldWords } from '../../../shared/sheet/field-words.ts';
import type { CellRecord } from '../../../shared/sheet/format.ts';
import { numberLines } from '../../../shared/sheet/numbering.ts';
import { figuresInWords, heldFigures } from '../../document/sharing/held-figures.ts';
import {
  askedAtFirst,
  keyOfText,
  markable,
  mustBeAsked,
  type TemplateText,
  textsOfTemplate,
  withMarks,
} from '../../document/sharing/template-marks.ts';
import { type Emptied, templateOf } from '../../document/template.ts';
import { Dialog } from '../kit/dialog.tsx';
import { addressOfSheet, go } from '../kit/router.ts';
import { useSheet } from '../state/context.ts';
import { inputTextWords, inputWords } from '../state/input-said.ts';
import { useLibrary } from '../state/library.ts';
import { useTools } from '../state/tools.ts';
import { cellTitle } from './differences-list.tsx';

import { useReadInputs } from './read-inputs.ts';
import { Fate, Held, Told } from './template-fates.tsx';
import { TemplateVariants } from './template-variants.tsx';

/** A template from this job: what it leaves out is shown first, and its author says what the next one fills in. */
export default function SaveTemplate(props: { onClose: () => void }) {
  const { sheet, notices } = useSheet();
  const tools = useTools();
  const job = sheet.document.toFile();
  const isRead = useReadInputs();
  const made = createMemo(() => templateOf(job, isRead));
  const [title, setTitle] = createSignal(made().file.title.title);
  const texts = createMemo(() => textsOfTemplate(made().file));
  const [asked, setAsked] = createSignal<ReadonlySet<string>>(
    new Set(askedAtFirst(untrack(texts)).map(keyOfText)),
  );
  const [locked, setLocked] = createSignal<ReadonlySet<string>>(
    new Set(untrack(made).file.cells.flatMap((cell) => (cell.locked ? [cell.id] : []))),
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
  const turned = (set: ReadonlySet<string>, key: string, on: boolean): ReadonlySet<string> => {
    const next = new Set(set);
    if (on) next.add(key);
    else next.delete(key);
    return next;
  };
  const cellOf = (id: string) => made().file.cells.find((cell) => cell.id === id)!;
  const isAsked = (one: TemplateText) => mustBeAsked(cellOf(one.id), one) || asked().has(keyOfText(one));
  const held = createMemo(() => heldFigures(made().file));
  const told = createMemo(() => figuresInWords(made().file));
  const toldBy = (id: string) => told().filter((one) => one.id === id);
  /** Variants with figures in them: those stay with this job unless its author says otherwise. */
  const variants = () =>
    (made().file.variants ?? []).filter(({ entries }) => Object.keys(entries).length > 0);
  const [left, setLeft] = createSignal<ReadonlySet<string>>(
    new Set(untrack(variants).map(({ name: variant }) => variant)),
  );
  /** Figures that would stand in the next job as if they were of its machine. */
  const lent = () =>
    texts().filter((one) => one.is === 'figure' && !isAsked(one)).length +
    held().length +
    variants()
      .filter((one) => !left().has(one.name))
      .reduce((sum, { entries }) => sum + Object.keys(entries).length, 0);
  const lines = () =>
    made()
      .file.cells.filter((cell) => markable(cell) || toldBy(cell.id).length > 0)
      .map((cell) => {
        const own = texts().filter(({ id }) => id === cell.id);
        // The entry goes without a name of its own: it stands beside the line's.
        return { cell, texts: own.sort((a, b) => Number(b.field === 'entry') - Number(a.field === 'entry')) };
      });
  /** Figures held in a text, and with the first of a line its tolerance. */
  const heldBy = (id: string, field: string | undefined, isFirst: boolean) =>
    held().filter((one) => one.id === id && (one.field === field || (isFirst && one.field === 'tolerance')));
  const library = useLibrary();
  const inputIn = (field: string) => /^inputs\.(.+)$/.exec(field)?.[1];
  const wordsOf = (cell: CellRecord | undefined, field: string) => {
    const input = inputIn(field);
    return input ? inputWords(library(), cell?.kind, input) : fieldWords(field);
  };
  const named = new Map(job.cells.flatMap((cell) => (cell.name ? [[cell.name, cell] as const] : [])));
  /** What stands there, for people: another line as it is called, what was chosen from a table by its name. */
  const textOf = (cell: CellRecord | undefined, field: string, text: string) => {
    const input = inputIn(field);
    const other = field === 'entry' ? undefined : named.get(text.trim());
    if (other) return cellTitle(other);
    return input ? inputTextWords(library(), cell?.kind, input, text) : text;
  };
  const nameOf = ({ id, field }: Emptied) => {
    const cell = job.cells.find((one) => one.id === id);
    return cell ? `${cellTitle(cell)}, ${wordsOf(cell, field)}` : sheetFieldWords(field);
  };
  /** `clean_up.skin`: the line, and which of its entries, with what a variant says there. */
  const variantWords = (at: string, text: string) => {
    const [name = '', input] = at.split('.');
    const cell = named.get(name);
    const field = input ? `inputs.${input}` : 'entry';
    return {
      at: `${cell ? cellTitle(cell) : name}${input ? `, ${wordsOf(cell, field)}` : ''}`,
      text: textOf(cell, field, text),
    };
  };
  const file = () => {
    const all = withMarks(made().file, { asked: asked(), locked: locked(), left: left() });
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
      <p>Labels, formulas, sources and notes are kept. This job stays as it is.</p>
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
          <ul
            // Scrolled by the keys too.
            tabindex={0}
            aria-label="Left out"
            class="max-h-12rem overflow-auto [columns:2_18rem] [&>li]:(wrap-anywhere [break-inside:avoid]) phone:max-h-none"
          >
            <For each={made().emptied}>
              {(one) => (
                <li>
                  {nameOf(one)}:{' '}
                  <bdi>
                    {textOf(
                      job.cells.find(({ id }) => id === one.id),
                      one.field,
                      one.text,
                    )}
                  </bdi>
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
        <h3 class="text-figure">What it asks for, keeps and takes along, line by line</h3>
        <p class={lent() + told().length > 0 ? 'verdict doubt' : 'caption'} role="status">
          <span class="tone">
            {lent() === 0
              ? told().length === 0
                ? 'No figure of this machine stays in it.'
                : ''
              : lent() === 1
                ? 'One figure of this machine would stay, and count in the next job as if it were its own. '
                : `${lent()} figures of this machine would stay, and count in the next job as if they were its own. `}
            {told().length === 0
              ? ''
              : told().length === 1
                ? 'One figure stays in words, as it is written.'
                : `${told().length} figures stay in words, as they are written.`}
          </span>
        </p>
        <For each={toldBy('')}>{(figure) => <Told of="The note of the sheet" figure={figure} />}</For>
        {/* The dialog scrolls on a phone: lists in it are whole. */}
        <div class="rows-box phone:max-h-none">
          <table class="long-rows">
            <thead>
              <tr>
                <th scope="col">No.</th>
                <th scope="col">Line</th>
                <th scope="col">Ask for it</th>
                <th scope="col">In the template</th>
                <th scope="col">Locked</th>
              </tr>
            </thead>
            <tbody>
              <For each={lines()}>
                {(line) => (
                  <For each={line.texts.length > 0 ? line.texts : [undefined]}>
                    {(one, k) => (
                      <tr>
                        <td>{k() === 0 ? numbers.get(line.cell.id) : ''}</td>
                        <td>
                          {k() === 0 ? cellTitle(line.cell) : ''}
                          <Show when={one && one.field !== 'entry'}>
                            <span class="block caption">{wordsOf(line.cell, one!.field)}</span>
                          </Show>
                        </td>
                        <td>
                          <Show when={one}>
                            {(it) => (
                              <label class="tick">
                                <input
                                  type="checkbox"
                                  checked={isAsked(it())}
                                  disabled={mustBeAsked(line.cell, it())}
                                  aria-label={`${cellTitle(line.cell)}${it().field === 'entry' ? '' : `, ${wordsOf(line.cell, it().field)}`}: to fill in`}
                                  onChange={(event) =>
                                    setAsked(turned(asked(), keyOfText(it()), event.currentTarget.checked))
                                  }
                                />
                              </label>
                            )}
                          </Show>
                        </td>
                        <td>
                          <Show when={one} fallback={<span class="caption">as it is</span>}>
                            {(it) => (
                              <Fate
                                text={it()}
                                said={textOf(line.cell, it().field, it().text)}
                                asked={isAsked(it())}
                              />
                            )}
                          </Show>
                          <For each={heldBy(line.cell.id, one?.field, k() === 0)}>
                            {(figure) => <Held figure={figure} />}
                          </For>
                          <For each={k() === 0 ? toldBy(line.cell.id) : []}>
                            {(figure) => <Told of={`its ${figure.field}`} figure={figure} />}
                          </For>
                        </td>
                        <td>
                          <Show when={k() === 0 && markable(line.cell)}>
                            <label class="tick">
                              <input
                                type="checkbox"
                                checked={locked().has(line.cell.id)}
                                aria-label={`${cellTitle(line.cell)}: locked`}
                                onChange={(event) =>
                                  setLocked(turned(locked(), line.cell.id, event.currentTarget.checked))
                                }
                              />
                            </label>
                          </Show>
                        </td>
                      </tr>
                    )}
                  </For>
                )}
              </For>
            </tbody>
          </table>
        </div>
        <p class="caption">A locked line can be unlocked; the sheet then says where it departs.</p>
      </section>
      <TemplateVariants
        variants={variants()}
        left={left()}
        words={variantWords}
        onTurn={(name, out) => setLeft(turned(left(), name, out))}
      />
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
