import { type Extension, RangeSetBuilder } from '@codemirror/state';
import {
  Decoration,
  type DecorationSet,
  type EditorView,
  ViewPlugin,
  type ViewUpdate,
} from '@codemirror/view';
import { highlightTree, tagHighlighter, tags } from '@lezer/highlight';
import { cleaned, isFormula, parserFor, type Top } from '../../language/grammar/tree.ts';
import { sizeProblem } from '../../language/syntax/size.ts';
import { preferences } from '../kit/preferences.ts';
import type { EntrySpot } from './spot.ts';

const highlighter = tagHighlighter([
  { tag: tags.variableName, class: 'w-name' },
  { tag: tags.propertyName, class: 'w-name' },
  { tag: tags.function(tags.variableName), class: 'w-function' },
  { tag: tags.unit, class: 'w-unit' },
  { tag: tags.keyword, class: 'w-unit' },
]);

/** An entry is one short line: it is read anew at every change, but for one too big to be read at all. */
const decorate = (view: EditorView, spot: EntrySpot): DecorationSet => {
  const builder = new RangeSetBuilder<Decoration>();
  const text = view.state.doc.toString();
  if (sizeProblem(text)) return builder.finish();
  const top: Top = isFormula(text) ? 'Formula' : spot.kind === 'tolerance' ? 'Cut' : 'Literal';
  highlightTree(
    parserFor(top, preferences().decimal).parse(cleaned(text)),
    highlighter,
    (from, to, classes) => {
      builder.add(from, to, Decoration.mark({ class: classes }));
    },
  );
  return builder.finish();
};

export const highlighted = (spot: EntrySpot): Extension =>
  ViewPlugin.fromClass(
    class {
      decorations: DecorationSet;
      constructor(view: EditorView) {
        this.decorations = decorate(view, spot);
      }
      update(update: ViewUpdate) {
        if (update.docChanged) this.decorations = decorate(update.view, spot);
      }
    },
    { decorations: (plugin) => plugin.decorations },
  );
