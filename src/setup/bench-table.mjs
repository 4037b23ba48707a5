// Puts the figures of tests/bench/results.json into the guide, between its two marks. `npm run bench:table`.
import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { inRepository } from './root.mjs';

const BEGIN = '<!-- measured: begin -->';
const END = '<!-- measured: end -->';

/** @param {number} ms */
const time = (ms) => (ms >= 100 ? `${Math.round(ms)} ms` : `${Number(ms.toPrecision(2))} ms`);

/**
 * The measured figures as Markdown.
 * @param {{engine: {node: string, edits: Record<string, number>[], growth: Record<string, number>[], drawn?: Record<string, number>[]}, browser?: {quantities: number, plain: Record<string, number>, atOnce?: Record<string, number>, throttled: Record<string, number>, opening?: {quantities: number, plain: Record<string, number>, throttled: Record<string, number>}, scrolling?: Record<string, number>}}} results
 */
export function benchTable(results) {
  const { edits, growth, drawn, node } = results.engine;
  const memory = (/** @type {number} */ quantities) =>
    growth.find((row) => row.quantities === quantities)?.memoryMB;
  const rows = edits.map((row) => [
    `${row.quantities} / ${row.sources}`,
    time(row.engineMs ?? 0),
    time(row.engineP95Ms ?? 0),
    String(row['engine / closures']),
    String(row['units / engine']),
    String(row['engine / nominal']),
    `${memory(row.quantities ?? 0)} MB`,
  ]);
  const table = [
    [
      'quantities / sources',
      'an edit',
      '95 in 100 within',
      'times closures by hand',
      'times faster than a library with units',
      'times nominal alone',
      'memory',
    ],
    ['---', '---', '---', '---', '---', '---', '---'],
    ...rows,
  ]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');
  const simulated = (drawn ?? []).map(
    (row) => `${row.draws} draws of ${row.quantities} quantities take ${row.seconds} s.`,
  );
  const seen = results.browser;
  const inBrowser = seen && [
    `In Chromium, ${seen.quantities} lines: from the key that takes an entry to the last line changed, median ${time(seen.plain.medianMs ?? 0)}, 95 in 100 within ${time(seen.plain.p95Ms ?? 0)}; with the processor throttled six times ${time(seen.throttled.medianMs ?? 0)} and ${time(seen.throttled.p95Ms ?? 0)}.`,
    ...(seen.atOnce
      ? [
          `Where the key follows the last sign at once, median ${time(seen.atOnce.medianMs ?? 0)}, 95 in 100 within ${time(seen.atOnce.p95Ms ?? 0)}.`,
        ]
      : []),
  ];
  const { opening, scrolling } = seen ?? {};
  const openedIn = opening && [
    `A saved sheet of ${opening.quantities} lines stands with every figure ${time(opening.plain.medianMs ?? 0)} after it is asked for, ${time(opening.throttled.medianMs ?? 0)} throttled.`,
  ];
  const scrolled = scrolling && [
    `Scrolling down ${scrolling.quantities} lines, a frame takes ${scrolling.medianMs} ms, 95 in 100 no more than ${scrolling.p95Ms} ms, and ${Number((100 * (scrolling.droppedShare ?? 0)).toFixed(1))} in 100 are dropped.`,
  ];
  return [
    table,
    '',
    `From a committed entry to results ready, worst case by corners included, median of 400 edits in one run (${node}, two shared cores).`,
    ...(simulated.length > 0 ? [simulated.join(' ')] : []),
    ...(inBrowser ?? []),
    ...(openedIn ?? []),
    ...(scrolled ?? []),
  ].join('\n');
}

/** @param {string} guide @param {string} table */
export function withTable(guide, table) {
  const from = guide.indexOf(BEGIN);
  const to = guide.indexOf(END);
  if (from < 0 || to < from)
    throw new Error('README.md has lost the marks its measured figures stand between.');
  return `${guide.slice(0, from + BEGIN.length)}\n${table}\n${guide.slice(to)}`;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const results = JSON.parse(readFileSync(inRepository('tests/bench/results.json'), 'utf8'));
  const guide = inRepository('README.md');
  writeFileSync(guide, withTable(readFileSync(guide, 'utf8'), benchTable(results)));
}
