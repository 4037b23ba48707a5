import { fieldWords } from '../../../shared/sheet/field-words.ts';
import { choiceIn } from '../../engine/rows/choice-in.ts';
import type { Library } from '../../engine/rows/library.ts';
import { say } from '../kit/words.ts';

const inputOf = (library: Library | undefined, kind: string | undefined, name: string) =>
  library?.kinds.get(kind ?? '')?.inputs.find((input) => input.name === name);

/** An input as its line calls it; by its name where the library is not there. */
export const inputWords = (library: Library | undefined, kind: string | undefined, name: string): string => {
  const label = inputOf(library, kind, name)?.label;
  return label === undefined ? fieldWords(`inputs.${name}`) : say(label);
};

/** What stands in an input, for people: a choice by its name in the table. */
export const inputTextWords = (
  library: Library | undefined,
  kind: string | undefined,
  name: string,
  text: string,
): string => {
  const choice = inputOf(library, kind, name)?.choice;
  const table = choice === undefined ? undefined : library?.tables.get(choice);
  const row = table && choiceIn(table, text);
  return row ? say(row.name) : text;
};
