import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inRepository } from './root.mjs';

const installStamp = inRepository('node_modules/.fitwright-install');

/** SHA-256 over names and contents of files and folders, given relative to the top. @param {string[]} paths */
export function hashOf(paths) {
  const hash = createHash('sha256');
  /** @param {string} path */
  const add = (path) => {
    const full = inRepository(path);
    if (!existsSync(full)) return;
    if (statSync(full).isDirectory()) {
      for (const name of readdirSync(full).sort()) add(join(path, name));
    } else {
      const content = readFileSync(full);
      hash.update(`${path}\0${content.length}\0`).update(content);
    }
  };
  for (const path of paths) add(path);
  return hash.digest('hex');
}

/** @param {string} file */
const readOr = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : '');

// Native parts differ by system and by Node release, so a folder copied to another one counts as stale.
const wantedInstall = () =>
  `${hashOf(['package-lock.json'])} ${process.platform}-${process.arch} node${process.versions.modules}`;

/** Whether node_modules was installed from the lock as it stands. */
export const installIsCurrent = () => readOr(installStamp) === wantedInstall();

/** Records that node_modules matches the lock. */
export function stampInstall() {
  if (existsSync(inRepository('node_modules'))) writeFileSync(installStamp, wantedInstall());
}

/**
 * Runs `build` unless `output` was last built from the same content of `inputs` (paths relative to the top).
 * @param {{ inputs: string[], output: string, build: () => Promise<void> }} job
 * @returns {Promise<boolean>} whether it was built
 */
export async function buildIfChanged({ inputs, output, build }) {
  const stamp = inRepository(`${output}.inputs`);
  const wanted = hashOf(inputs);
  if (existsSync(inRepository(output)) && readOr(stamp) === wanted) return false;
  await build();
  writeFileSync(stamp, wanted);
  return true;
}
