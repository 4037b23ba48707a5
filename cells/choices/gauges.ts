export { gaugeTable as default } from '../tables/gauges/gauges.ts';
