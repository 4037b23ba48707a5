export { materialTable as default } from '../tables/materials/materials.ts';
