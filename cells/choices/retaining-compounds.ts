export { retainingCompoundTable as default } from '../tables/retaining-compounds.ts';
