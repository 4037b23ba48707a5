import { changesTo, type Keyed, listText, putTogether, takeApart } from './readings.ts';

/**
 * A list of readings that was typed while somebody else wrote the same list: what both did to the text that the typing
 * began with. Undefined where they changed the same reading, or where one of the texts is no list.
 */
export const mergedReadings = (opened: string, typed: string, meanwhile: string): string | undefined => {
  const [from, mine, theirs] = [opened, typed, meanwhile].map((text) => takeApart(text.trim()));
  if (!from || !mine || !theirs) return undefined;
  // A unit that is not typed is that of the list.
  const tail = mine.tail === '' ? from.tail : mine.tail;
  if (tail !== from.tail && theirs.tail !== from.tail && tail !== theirs.tail) return undefined;
  const numbered = (mark: string) => {
    let n = 0;
    return () => `${mark}${n++}`;
  };
  const base: Keyed[] = [...changesTo([], undefined, from, numbered('a'))].flatMap(([id, element]) =>
    element ? [[id, element] as const] : [],
  );
  const head = { list: from.tail };
  const ours = changesTo(base, head, { ...mine, tail }, numbered('b'));
  const others = changesTo(base, head, theirs, numbered('c'));
  if ([...ours.keys()].some((id) => others.has(id))) return undefined;
  const merged = new Map(base);
  for (const [id, element] of [...ours, ...others])
    if (element) merged.set(id, element);
    else merged.delete(id);
  const text = listText([...merged], { list: tail === from.tail ? theirs.tail : tail });
  const apart = takeApart(text);
  return apart && putTogether(apart) === text ? text : undefined;
};
