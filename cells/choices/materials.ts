export { materialTable as default } from '../tables/materials.ts';
