export { coldContractionTable as default } from '../tables/cold-contraction.ts';
