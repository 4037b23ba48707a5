/** Keys that answer the question of the line under the cursor. */
export const OFFER_KEY = 'F4';
export const RIGHT_KEY = 'Shift+F4';
