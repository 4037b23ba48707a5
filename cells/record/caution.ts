/** A caution that holds for some metals or methods alone. */
export interface CautionFor {
  text: string;
  /** Said where one of these inputs is given, or a row of a table with such a name is chosen. */
  given?: readonly string[];
  chosen?: RegExp;
  /** Said where one of the materials taken is such, by its name; while none is chosen too. */
  material?: RegExp;
}

export type Caution = string | CautionFor;

export const cautionText = (caution: Caution): string =>
  typeof caution === 'string' ? caution : caution.text;

/** All that a kind of cell warns of, whatever is chosen. */
export const cautionTexts = (kind: { cautions: readonly Caution[] }): string[] =>
  kind.cautions.map(cautionText);
