export { snapRingTable as default } from '../tables/snap-rings.ts';
