import { idIn } from '../syntax/ids.ts';
import type { Reference } from '../syntax/syntax.ts';
import { escapeMarkup } from './markup.ts';

/** A name as it is typed, whole and upright, so that what is read here is found on the sheet. An output stands behind its cell, with a point. */
export const wholeName = (ref: Pick<Reference, 'name' | 'output'>): string => {
  const own = idIn(ref.name) ?? ref.name;
  return ref.output === undefined ? own : `${own}.${ref.output}`;
};

export const nameMark = (text: string): string => `<mi mathvariant="normal">${escapeMarkup(text)}</mi>`;
