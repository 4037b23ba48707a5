export { oilTable as default } from '../tables/viscosity.ts';
