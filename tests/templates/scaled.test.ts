import { describe, expect, it } from 'vitest';
import { library } from '../../cells/catalogue.ts';
import type { CellRecord, SheetFile } from '../../shared/sheet/format.ts';
import { withExamples } from '../../src/command/example.ts';
import { figuresInWords, heldFigures } from '../../src/document/sharing/held-figures.ts';
import { computeSheet } from '../../src/engine/compute.ts';
import { sheetOf, templates } from './shelf.ts';

/** The number of every length with a unit, and of the readings before it. */
const LENGTH =
  /((?:\d+[ -])?\d+\/\d+|\d*\.?\d+)(?=(?:\s*[;|]\s*\.?\d[\d.]*)*(?:\s*±\s*\d*\.?\d+)?\s*(?:in|mm|thou|um|µm|")(?![\w/]))/g;
const number = (text: string): number => {
  const [, whole = '0', top, bottom] = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text) ?? [];
  return top === undefined ? Number(text) : Number(whole) + Number(top) / Number(bottom);
};
const scaled = (text: string, factor: number): string =>
  text.replace(LENGTH, (found) => String(Number((number(found) * factor).toPrecision(12))));

const times = (value: unknown, factor: number): unknown =>
  typeof value === 'string'
    ? scaled(value, factor)
    : value && typeof value === 'object'
      ? Object.fromEntries(Object.entries(value).map(([k, v]) => [k, times(v, factor)]))
      : value;

const asked = (value: unknown, factor: number): unknown =>
  value && typeof value === 'object'
    ? Object.fromEntries(
        Object.entries(value).map(([k, v]) => [
          k,
          k.endsWith('Example') ? times(v, factor) : asked(v, factor),
        ]),
      )
    : value;

/** The template filled in by its examples, every length in them so many times as large. */
const filled = (file: SheetFile, factor: number): SheetFile =>
  withExamples({
    ...file,
    cells: file.cells.map((cell) => {
      const limits = Object.fromEntries(
        Object.entries(cell.limits ?? {}).map(([k, v]) => [k, k.endsWith('Example') ? times(v, factor) : v]),
      );
      return {
        ...cell,
        ...(cell.limits ? { limits } : {}),
        ...(cell.outputs ? { outputs: asked(cell.outputs, factor) as typeof cell.outputs } : {}),
        ...(cell.example ? { example: scaled(cell.example, factor) } : {}),
        ...(cell.examples ? { examples: times(cell.examples, factor) } : {}),
      } as typeof cell;
    }),
  });

const WHICH = ['lower', 'upper', 'wear'] as const;
const byThread = (file: SheetFile, cell: CellRecord, limit: string | undefined): boolean =>
  file.cells.some(
    ({ name, kind, inputs, examples }) =>
      (inputs?.thread ?? examples?.thread) !== undefined &&
      kind !== undefined &&
      (name === cell.name || new RegExp(`\\b${name}\\.`).test(limit ?? '')),
  );

describe.each(templates)('%s at half and at twice its size', (name) => {
  const file = sheetOf(name);
  const [half, own, twice] = [0.5, 1, 2].map((factor) => computeSheet(filled(file, factor), library));
  const limitAt = (of: typeof own, id: string, output: string, which: (typeof WHICH)[number]) =>
    of!.cells.find((cell) => cell.id === id)?.outputs[output]?.limits?.[which]?.value;

  it('reads every entry', () => {
    const problems = [half, twice].flatMap((of) => of!.cells.flatMap((cell) => cell.problems));
    expect(problems).toEqual([]);
  });

  it('holds nothing to a size of the example: every limit on a length goes with the machine', () => {
    const unmoved: string[] = [];
    const apart: string[] = [];
    for (const cell of file.cells)
      for (const [output, { quantity }] of Object.entries(
        own!.cells.find(({ id }) => id === cell.id)?.outputs ?? {},
      ))
        for (const which of WHICH) {
          const [a, b, c] = [half, own, twice].map((of) => limitAt(of, cell.id, output, which));
          if (quantity !== 'length' || !a || !b || !c) continue;
          const text = output === 'value' ? cell.limits?.[which] : undefined;
          const at = `${name} ${cell.name}${output === 'value' ? '' : `.${output}`} ${which}`;
          if (byThread(file, cell, text)) continue;
          if (Math.abs(c - b) < 1e-9 || Math.abs(b - a) < 1e-9) unmoved.push(at);
          else if (Math.abs(c - 2 * b) > 1e-9 && /\d\s*(in|thou|mm|um)\b/.test(text ?? '')) apart.push(at);
        }
    // Nor by a figure beside the size: an allowance that fits the example is three times too wide for a machine of a third.
    expect([...unmoved, ...apart]).toEqual([]);
  });

  it('cuts no size to a tolerance of the example: each goes with its size, by a class of ISO 286', () => {
    const fixed = file.cells.filter(
      ({ tolerance }) => tolerance && !/^[A-Za-z]{1,2}\d{1,2}$/.test(tolerance),
    );
    expect(fixed.map(({ name: cell, tolerance }) => `${cell} ${tolerance}`)).toEqual([]);
  });

  it('says no size of the example, and no range of its gauges: not in a name, nor in a note but a rule of the trade', () => {
    const rule = /common practice, no source|from memory/;
    const textAt = (id: string, field: string) => {
      const of = id === '' ? file.title : file.cells.find((cell) => cell.id === id);
      return String(of?.[field as 'note'] ?? '');
    };
    const named = figuresInWords(file)
      .filter(({ figure }) => /(\b(in|mm|thou|um)|[µμ]m|["″]|\d)$/.test(figure))
      .filter(({ id, field }) => field === 'label' || !rule.test(textAt(id, field)))
      .map(({ id, field, figure }) => `${id} ${field}: ${figure}`);
    const ranged = file.cells.flatMap(({ kind, name: cell = '' }) =>
      kind === 'gauge' && /\d/.test(cell) ? [cell] : [],
    );
    expect([...named, ...ranged]).toEqual([]);
  });

  it('works nothing out from a length written in a formula', () => {
    const held = heldFigures(file).filter(({ figure }) => /\d\s*(in|thou|mm|um|µm|")$/.test(figure));
    expect(held.map(({ id, field, figure }) => `${id} ${field}: ${figure}`)).toEqual([]);
  });
});
