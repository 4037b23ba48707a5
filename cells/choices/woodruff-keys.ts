export { woodruffTable as default } from '../tables/keys.ts';
