export { bearingLimitTable as default } from '../tables/bearing-limits.ts';
