/** Long walks and long random runs are gone whole by `npm run prove`; `npm test` goes a seeded sample of each. */
const proving = process.env.FITWRIGHT_PROVE !== undefined;

export const walk = (sample: number, whole: number): number => (proving ? whole : sample);
