import { type Problem, problem } from '../../../shared/problem.ts';
import { cellNameProblem } from '../../language/names.ts';
import type { Editing } from '../model/editing.ts';
import { textKind } from '../model/texts.ts';

/** Gives a cell another name, or takes it away (`''`) where no formula needs it. Formulas follow. */
export function renameCell(e: Editing, id: string, wish: string): Problem | undefined {
  const name = wish.trim().normalize('NFC');
  const before = e.reading.nameOf(id);
  if (!e.replica.has(id) || name === before) return undefined;
  const refuse = (message: string): Problem =>
    problem('syntax', message, { field: 'name', originId: id, origin: e.reading.title(id) });
  if (name === '') {
    const users = e.reading.usedBy(new Set([id])).filter((user) => user !== id);
    if (users.length > 0) {
      return refuse(
        `${e.reading.title(users[0]!)} uses ${before}: give the line another name instead of none, or change that formula first.`,
      );
    }
  } else {
    const bad = cellNameProblem(name);
    if (bad) return { ...bad, field: 'name', originId: id, origin: e.reading.title(id) };
    const other = e.reading.idOf(name);
    if (other !== undefined && other !== id) {
      const label = e.replica.get(other, 'label');
      const which =
        typeof label === 'string' && label !== '' ? ` of the line "${label}"` : ' of another line';
      return refuse(`${name} is already the name${which}: choose another, such as ${name}_2.`);
    }
  }
  if (before !== undefined) bindTexts(e, before);
  e.set(id, 'name', name === '' ? undefined : name);
  return undefined;
}

/**
 * Ties to its cell every text that says its name without being tied: typed before the cell was there, or tied to a
 * deleted cell of the same name. Without this a rename would leave them behind.
 */
function bindTexts(e: Editing, name: string): void {
  for (const id of e.replica.live()) {
    for (const [path, stored] of [...e.replica.fields(id)]) {
      const kind = textKind(path);
      if (!kind || typeof stored !== 'string') continue;
      const shown = e.reading.show(stored);
      if (shown.includes(name)) e.set(id, path, e.reading.store(shown, kind, id));
    }
  }
}
