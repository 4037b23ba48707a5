import { CELL_FIELDS } from '../../../shared/sheet/cell-fields.ts';
import { fieldAtPath } from '../../../shared/sheet/field.ts';
import { freshId } from './fresh-id.ts';
import {
  changesTo,
  countOf,
  elementKey,
  isHead,
  type Keyed,
  type ListHead,
  listsIn,
  putTogether,
  takeApart,
} from './readings.ts';

/** What writing a list needs of an edit of the document. */
interface Writing {
  readonly replica: {
    get(id: string, key: string): unknown;
    fields(id: string): Iterable<[string, unknown]>;
  };
  edits: Array<{ map: string | undefined; key: string; before: unknown; after: unknown }>;
  write(map: string | undefined, key: string, value: unknown): void;
  setField(map: string | undefined, key: string, value: unknown): void;
}

/** Texts that are read as entries may be lists of readings. */
export const mayList = (key: string): boolean => fieldAtPath(CELL_FIELDS, key)?.reads !== undefined;

/** Read off a part: one reading is the beginning of a list there, to which somebody else may add. */
const isMeasured = (e: Writing, id: string, key: string): boolean => {
  const role = fieldAtPath(CELL_FIELDS, key)?.reads?.role;
  return role === 'measured' || (role === 'own' && e.replica.get(id, 'role') === 'measured');
};

/** Writes the text of a field that may be a list of readings; `undefined` takes it away. */
export function setReadings(e: Writing, id: string, key: string, text: string | undefined): void {
  const own = e.replica.get(id, key);
  let elements = listsIn(e.replica.fields(id)).get(key) ?? [];
  const wanted = text === undefined ? undefined : takeApart(text);
  const asList =
    wanted !== undefined &&
    putTogether(wanted) === text &&
    (countOf(wanted) > 1 || elements.length > 0 || isMeasured(e, id, key));
  if (!asList) {
    for (const [one] of elements) e.setField(id, elementKey(key, one), undefined);
    e.setField(id, key, text);
    return;
  }
  let head = isHead(own) ? own : undefined;
  const before = typeof own === 'string' && elements.length === 0 ? ofText(own) : undefined;
  if (before) ({ elements, head } = before);
  const taken = new Set(elements.map(([one]) => one));
  const changes = changesTo(elements, head, wanted, () => {
    const one = freshId((other) => taken.has(other));
    taken.add(one);
    return one;
  });
  if (before) {
    // The text taken apart is no step to take back: it says the same, and somebody may add to it meanwhile.
    e.write(id, key, before.head);
    for (const [one, element] of elements) {
      const at = elementKey(key, one);
      const after = changes.has(one) ? changes.get(one) : element;
      e.write(id, at, after);
      if (changes.has(one)) e.edits.push({ map: id, key: at, before: element, after });
      changes.delete(one);
    }
  }
  e.setField(id, key, { list: wanted.tail } satisfies ListHead);
  for (const [one, element] of changes) e.setField(id, elementKey(key, one), element);
}

/**
 * A list that older editions stored as one text. Keys and orders follow from the text alone: two who take it apart at the
 * same time write the same.
 */
function ofText(text: string): { elements: Keyed[]; head: ListHead } | undefined {
  const apart = takeApart(text);
  if (!apart) return undefined;
  const elements: Keyed[] = [];
  let n = 0;
  const changes = changesTo([], undefined, apart, () => `p${n++}`);
  for (const [one, element] of changes) if (element) elements.push([one, element]);
  return { elements, head: { list: apart.tail } };
}
