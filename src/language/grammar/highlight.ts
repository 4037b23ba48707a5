/** The grammar as a language of the CodeMirror editor. Nothing that parses or computes imports this file. */
import { defineLanguageFacet, Language, languageDataProp } from '@codemirror/language';
import { type Input, type NodePropSource, Parser, type PartialParse, type TreeFragment } from '@lezer/common';
import type { LRParser } from '@lezer/lr';
import { isFormula, parserFor, type Top } from './tree.ts';

const data = defineLanguageFacet({ closeBrackets: { brackets: ['('] } });

const withData: NodePropSource = languageDataProp.add((type) => (type.isTop ? data : undefined));

const made = new Map<string, LRParser>();

const withLanguage = (top: Top, decimal: '.' | ','): LRParser => {
  const key = top + decimal;
  const found = made.get(key) ?? parserFor(top, decimal).configure({ props: [withData] });
  made.set(key, found);
  return found;
};

/** Chooses the top by the first character, which one grammar with one top cannot do; entries are short, so each edit parses anew. */
class EntryParser extends Parser {
  constructor(
    private readonly decimal: '.' | ',',
    private readonly fixed?: Top,
  ) {
    super();
  }

  createParse(
    input: Input,
    _fragments: readonly TreeFragment[],
    ranges: readonly { from: number; to: number }[],
  ): PartialParse {
    const text = input.read(0, input.length);
    const top = this.fixed ?? (isFormula(text) ? 'Formula' : 'Literal');
    return withLanguage(top, this.decimal).startParse(input, [], ranges);
  }
}

/** Language of an entry field, or (`Cut`) of a tolerance field. */
export const entryLanguage = (decimal: '.' | ',' = '.', top?: Top): Language =>
  new Language(data, new EntryParser(decimal, top), [], 'entry');
