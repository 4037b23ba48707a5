export { gaugeTable as default } from '../tables/gauges.ts';
