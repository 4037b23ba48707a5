import { cautionTexts } from '../../../cells/record/caution.ts';
import type { CellKind } from '../../../cells/record/cell.ts';
import { quantityKinds } from '../../../shared/quantities/quantities.ts';
import { searchForm } from '../../../shared/search-form.ts';

export interface BookQuery {
  words: string;
  /** Kind of quantity that goes in, or comes out; empty for any. */
  goesIn: string;
  comesOut: string;
}

export const ANYTHING: BookQuery = { words: '', goesIn: '', comesOut: '' };

const texts = (kind: CellKind): string =>
  searchForm(
    [
      kind.title,
      kind.purpose,
      kind.group,
      kind.key,
      ...[...kind.inputs, ...kind.outputs].flatMap((one) => [one.label, one.name, one.hint ?? '']),
      ...kind.assumptions,
      ...cautionTexts(kind),
      ...kind.sources,
      ...kind.examples.map((example) => example.title),
    ].join(' '),
  );

/** Cells that hold every word somewhere, take that quantity in and give that one out.  */
export const findInBook = (kinds: Iterable<CellKind>, query: BookQuery): CellKind[] => {
  const words = searchForm(query.words).split(/\s+/).filter(Boolean);
  const has = (text: string) => words.every((word) => text.includes(word));
  return [...kinds]
    .filter(
      (kind) =>
        (query.goesIn === '' || kind.inputs.some((input) => input.quantity === query.goesIn)) &&
        (query.comesOut === '' || kind.outputs.some((output) => output.quantity === query.comesOut)) &&
        has(texts(kind)),
    )
    .map((kind) => ({ kind, ahead: has(searchForm(`${kind.title} ${kind.purpose}`)) }))
    .sort((a, b) => Number(b.ahead) - Number(a.ahead))
    .map(({ kind }) => kind);
};

/** Kinds of quantity that some cell takes in, or gives out, to choose from. */
export const quantitiesOf = (
  kinds: Iterable<CellKind>,
  side: 'inputs' | 'outputs',
): { value: string; label: string }[] => {
  const found = new Set([...kinds].flatMap((kind) => kind[side].map((one) => one.quantity)));
  return quantityKinds
    .filter((one) => found.has(one.name))
    .map(({ name, label }) => ({ value: name, label }));
};
