/**
 * True where a problem or a question is about the text of a field: those of a size as measured name `measured`, whose
 * text is its `entry`.
 */
export const isOfField = (named: string | undefined, field: string): boolean =>
  named !== undefined && (named === field || (/(^|\.)measured$/.test(named) && `${named}.entry` === field));
