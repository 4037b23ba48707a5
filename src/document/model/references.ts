import type { TextKind } from '../../../shared/sheet/field.ts';
import { referencesIn } from '../../language/names.ts';

/**
 * Stored text holds cells by id, `=({c12} + 2 in) / 2`, so that a rename is one field and cannot bend a formula that
 * somebody else is typing. A brace the user typed is stored as `{}`; what names no cell stays as it was typed.
 */
const REFERENCE = /\{([^{}]*)\}/g;

const DOTTED = /^([\p{L}_][\p{L}\p{M}\p{N}_]*)\.([\p{L}_][\p{L}\p{M}\p{N}_]*)$/u;

const plain = (text: string): string => text.replaceAll('{', '{}');

/** An id that cannot stand between braces is never bound; the name stays. */
const bound = (id: string | undefined): string | undefined =>
  id !== undefined && /^[^{}]+$/.test(id) ? id : undefined;

/** Text with names to text with ids. `idOf` gives the cell a name stands for. */
export function toStored(text: string, kind: TextKind, idOf: (name: string) => string | undefined): string {
  const bare = text.trim();
  if (kind === 'name' || (kind === 'input' && !bare.startsWith('='))) {
    const id = bound(idOf(bare));
    if (id !== undefined) return `{${id}}`;
    if (kind === 'name') return plain(text);
    // A figure or a choice of another line, named without the equals sign: `next.thread`.
    const [, name, output] = DOTTED.exec(bare) ?? [];
    const of = name === undefined ? undefined : bound(idOf(name));
    if (of !== undefined) return `{${of}}.${output}`;
  }
  let out = '';
  let done = 0;
  for (const ref of [...referencesIn(text)].sort((a, b) => a.from - b.from)) {
    const end = ref.from + ref.name.length;
    if (ref.from < done || text.slice(ref.from, end) !== ref.name) continue;
    const id = bound(idOf(ref.name));
    if (id === undefined) continue;
    out += `${plain(text.slice(done, ref.from))}{${id}}`;
    done = end;
  }
  return out + plain(text.slice(done));
}

/** Text with ids to text with names. An id nobody knows shows as itself. */
export const toNames = (stored: string, nameOf: (id: string) => string | undefined): string =>
  stored.replace(REFERENCE, (_, id: string) => (id === '' ? '{' : (nameOf(id) ?? id)));

/** Ids a stored text refers to. */
export function* idsIn(stored: string): Iterable<string> {
  if (!stored.includes('{')) return;
  for (const [, id] of stored.matchAll(REFERENCE)) if (id) yield id;
}
