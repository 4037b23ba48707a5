/**
 * Two rings pressed together, after Lame: elastic, plane stress, both at the diameter where they meet. Formulas of the sheet's
 * language over the names that a cell gives its own lines.
 */

/** Give of the inner ring: change of its outside per diameter, times E, per pressure. */
export const innerGive = (contact: string, bore: string, material: string): string =>
  `=(${contact}^2 + ${bore}^2) / (${contact}^2 - ${bore}^2) - ${material}.nu`;

/** Give of the outer ring: change of its bore per diameter, times E, per pressure. */
export const outerGive = (outside: string, contact: string, material: string): string =>
  `=(${outside}^2 + ${contact}^2) / (${outside}^2 - ${contact}^2) + ${material}.nu`;

/** What the bore of the inner ring closes in by under `pressure`. */
export const boreClosesIn = (contact: string, bore: string, material: string): string =>
  `=2 * pressure * ${contact}^2 * ${bore} / (${material}.E * (${contact}^2 - ${bore}^2))`;
