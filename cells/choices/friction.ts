export { frictionTable as default } from '../tables/friction.ts';
