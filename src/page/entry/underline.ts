import { type Extension, StateEffect, StateField } from '@codemirror/state';
import { Decoration, type DecorationSet, EditorView, type ViewUpdate } from '@codemirror/view';
import type { Problem } from '../../../shared/problem.ts';

const setProblems = StateEffect.define<readonly Problem[]>();

const wrong = Decoration.mark({ class: 'w-wrong' });

const field = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(marks, transaction) {
    let now = marks.map(transaction.changes);
    for (const effect of transaction.effects) {
      if (!effect.is(setProblems)) continue;
      const length = transaction.state.doc.length;
      const ranges = effect.value.flatMap((problem) => {
        const from = Math.min(problem.from ?? 0, length);
        const to = Math.min(Math.max(problem.to ?? length, from), length);
        return to > from ? [wrong.range(from, to)] : [];
      });
      now = Decoration.set(ranges, true);
    }
    return now;
  },
  provide: (f) => EditorView.decorations.from(f),
});

/** While typing nothing nags; after a pause what is wrong is underlined and said. */
const PAUSE = 400;

/** Underlines what the language finds wrong, and tells `say` about it. */
export const underlined = (
  check: (text: string) => Promise<Problem[]>,
  say: (problems: readonly Problem[]) => void,
): Extension => {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return [
    field,
    EditorView.updateListener.of((update: ViewUpdate) => {
      if (!update.docChanged) return;
      clearTimeout(timer);
      say([]);
      timer = setTimeout(async () => {
        const text = update.view.state.doc.toString();
        // Where it cannot be fetched nothing is underlined; the entry is read all the same.
        const problems = await check(text).catch(() => []);
        if (!update.view.dom.isConnected || update.view.state.doc.toString() !== text) return;
        update.view.dispatch({ effects: setProblems.of(problems) });
        say(problems);
      }, PAUSE);
    }),
  ];
};
