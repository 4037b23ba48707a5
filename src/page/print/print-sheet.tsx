import { For, Show } from 'solid-js';
import { handbook } from '../../../cells/handbook.ts';
import { ownRule, RULE_WORDS } from '../../../shared/checks/decision-rules.ts';
import { drawsWords } from '../../../shared/checks/words.ts';
import { fingerprint, shortFingerprint } from '../../../shared/sheet/fingerprint.ts';
import { settle } from '../../document/sharing/settle.ts';
import { kindsOf } from '../../engine/rows/kinds-of.ts';
import type { Figure } from '../../engine/rows/results.ts';
import { CareList } from '../kit/care-list.tsx';
import { CheckSign } from '../kit/check-mark.tsx';
import { leading, serviceWords } from '../kit/check-words.ts';
import { sayMessage } from '../kit/say-message.ts';
import { say } from '../kit/words.ts';
import { bandHead, bandWords, careOfLines, DEFERS } from '../state/care.ts';
import { useSheet } from '../state/context.ts';
import { judgedText } from '../state/judged-text.ts';
import { useLibrary } from '../state/library.ts';
import { quantityAt } from '../state/quantity-at.ts';
import { titleBoxes } from '../state/title-boxes.ts';
import './print.css';
import { BenchPart } from './bench-part.tsx';
import { CutTable } from './cut-table.tsx';
import { checkedOutputs, cutLines, knownLines } from './paper-lines.ts';
import { paperNotes } from './paper-notes.ts';

/** Rows, and characters of running text, that leave room for larger type on one sheet. */
const ROOMY = { rows: 11, characters: 2200 };

/** The sheet on paper: what to cut and to which limits, boxes for what came out, checks, cautions, sources, signature. */
export default function PrintSheet() {
  const { sheet, show } = useSheet();
  const library = useLibrary();
  const title = () => sheet.state.title;
  const kinds = () => [
    ...new Set(
      sheet.state.order.flatMap((id) => {
        const key = sheet.line(id)?.record.kind;
        return (key && library()?.kinds.get(key)) || [];
      }),
    ),
  ];
  const care = () => careOfLines(sheet, library(), sheet.state.order);
  /** At once: the browser's own command to print waits for nothing. Blank where a kind of cell has not come. */
  const print = (): string | undefined => {
    const known = library();
    const file = sheet.document.toFile();
    if (!known || kindsOf(file.cells).some((kind) => known.kinds.has(kind) && !known.kinds.get(kind)))
      return undefined;
    return shortFingerprint(fingerprint(settle(file, { quantityAt: quantityAt(known), handbook })));
  };
  /** What lines say of the part itself. */
  const cameOut = () =>
    sheet.state.order.flatMap((id) =>
      (sheet.line(id)?.result?.remarks ?? [])
        .filter(({ paper }) => paper)
        .map(
          ({ message }) => `${sheet.numberOf(id) ?? ''} ${sheet.titleOf(id)}: ${sayMessage(message, sheet)}`,
        ),
    );
  const sources = () => [...new Set(kinds().flatMap((kind) => kind.sources))];
  const notes = () => paperNotes(sheet);
  /** By which of several ways the job is gone. */
  const waysTaken = () =>
    sheet
      .forks()
      .map(({ to, by, taken }) =>
        taken === undefined ? `${to}: ${by.join(', or ')}, not decided.` : `${to}: ${taken}.`,
      )
      .map(say);
  /** What may have been written down wrong, and nobody has answered. */
  const questions = () =>
    sheet.state.order.flatMap((id) =>
      (sheet.line(id)?.result?.slips ?? []).map(
        ({ message }) => `${sheet.numberOf(id)} ${sheet.titleOf(id)}: ${sayMessage(message, sheet)}`,
      ),
    );
  const roomy = () => {
    const written = [...questions(), ...care().map(({ text }) => text), ...sources(), ...notes()];
    return (
      cutLines(sheet).length + checkedOutputs(sheet).length <= ROOMY.rows &&
      written.reduce((sum, text) => sum + text.length, 0) <= ROOMY.characters
    );
  };
  const boxes = (): Array<[string, string | undefined]> => [
    ...titleBoxes().map(({ field, label }): [string, string | undefined] => [label, title()[field]]),
    ['Reference temperature', title().referenceTemperature?.replace('deg', '°') ?? '20 °C (ISO 1)'],
    ['Checks follow', RULE_WORDS[sheet.state.rule]],
    ['Fingerprint', print()],
  ];
  return (
    <article class="print-sheet" classList={{ roomy: roomy() }}>
      <header class="print-title">
        <h1>{say(title().title)}</h1>
        <dl>
          <For each={boxes()}>
            {([label, text]) => (
              <div>
                <dt>{label}</dt>
                <dd>{(text && say(text)) || '\u00a0'}</dd>
              </div>
            )}
          </For>
        </dl>
      </header>

      <Show when={sheet.state.rev === 0}>
        <p class="print-defers">
          Printed before its figures were worked out: print it again once they are on the screen.
        </p>
      </Show>
      <Running title="Not answered yet" class="print-cautions" list={questions()} />
      <Show when={care().length > 0}>
        <section class="print-cautions print-care">
          <h2>Caution</h2>
          <CareList list={care()} />
        </section>
      </Show>
      <CutTable lines={cutLines(sheet)} />
      <BenchPart />
      <p class="print-signature">
        <span>Cut by</span>
        <span>Measured by</span>
        <span>Date</span>
        <span>Signature</span>
      </p>

      <Show when={checkedOutputs(sheet).length > 0}>
        <section class="print-checks">
          <h2>Checks</h2>
          <p class="print-standing">{[sheet.standing().words, ...waysTaken()].join(' ')}</p>
          <table>
            <thead>
              <tr>
                <th>No.</th>
                <th>Dimension</th>
                <th>
                  Stands at, <small>{bandHead(sheet.state.rule)}</small>
                </th>
                <th>Lower</th>
                <th>Upper</th>
                <th>Wear</th>
                <th>Check</th>
              </tr>
            </thead>
            <tbody>
              <For each={checkedOutputs(sheet)}>
                {(row, k) => {
                  const at = show.output(row.cell, row.output);
                  /** Beside a figure, which has said the unit, a number alone. */
                  const limit = (side: Figure | undefined) =>
                    side &&
                    (row.figure ? at.limitNumber(side.value, row.figure, row.band) : at.limit(side.value));
                  const again = checkedOutputs(sheet)[k() - 1]?.cell === row.cell;
                  return (
                    <tr>
                      <td>{again ? '' : row.number}</td>
                      <td class={again ? 'what again' : 'what'}>{again ? row.label : row.title}</td>
                      <td class="figure">
                        {row.figure
                          ? `${at.value(row.figure, row.band)} ${at.spread(row.figure, row.band)}`
                          : '—'}
                        <span class="why">
                          {judgedText(sheet.line(row.cell)?.result?.outputs[row.output], at)}
                        </span>
                      </td>
                      <td class="figure">{limit(row.limits.lower)}</td>
                      <td class="figure">{limit(row.limits.upper)}</td>
                      <td class="figure">{limit(row.limits.wear)}</td>
                      <td class="check">
                        <span class="at-one">
                          <CheckSign state={leading(row.check).state} />
                          {leading(row.check).state}
                        </span>
                        {[
                          leading(row.check).side,
                          serviceWords(row.check),
                          ownRule(row.check.rule, sheet.state.rule),
                          drawsWords(row.check),
                        ]
                          .filter(Boolean)
                          .map((words) => `; ${words}`)
                          .join('')}
                        <For each={[row.check.note, row.check.where].filter((one) => one !== undefined)}>
                          {(why) => <span class="why">{sayMessage(why, sheet)}</span>}
                        </For>
                      </td>
                    </tr>
                  );
                }}
              </For>
            </tbody>
          </table>
        </section>
      </Show>

      <Show when={knownLines(sheet).length > 0}>
        <section class="print-known">
          <h2>Figures</h2>
          <ul class="run">
            <For each={knownLines(sheet)}>
              {(row) => {
                const at = show.output(row.cell, row.output);
                return (
                  <li>
                    <span class="known">
                      {row.number} {row.title} ({row.word}){' '}
                      <b>{row.figure ? at.value(row.figure) : row.entry || '—'}</b>
                      {row.figure ? ` ${at.beside(row.figure, row.read)}` : ''}
                    </span>
                  </li>
                );
              }}
            </For>
          </ul>
        </section>
      </Show>

      <Running title="Beyond tolerance" class="print-cautions" list={cameOut()} />
      <Running title="Sources" class="print-small" list={sources()} />
      <Running title="Notes" class="print-notes" list={notes()} />
      <p class="print-defers">
        {bandWords(sheet.state.rule)} {DEFERS}
      </p>
    </article>
  );
}

/** Texts that run on, under a heading; nothing where there are none. */
const Running = (props: { title: string; class: string; list: readonly string[] }) => (
  <Show when={props.list.length > 0}>
    <section class={props.class}>
      <h2>{props.title}</h2>
      <ul class="run">
        <For each={props.list}>{(text) => <li>{text}</li>}</For>
      </ul>
    </section>
  </Show>
);
