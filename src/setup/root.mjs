import { fileURLToPath } from 'node:url';

/** Absolute path of a file of the repository, from its path relative to the top. @param {string} path */
export const inRepository = (path) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
