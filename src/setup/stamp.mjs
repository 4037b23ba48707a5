import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
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
  const isCurrent = () => existsSync(inRepository(output)) && readOr(stamp) === wanted;
  if (isCurrent()) return false;
  const letGo = await held(inRepository(`${output}.building`));
  try {
    // Another program may have built it meanwhile.
    if (isCurrent()) return false;
    rmSync(stamp, { force: true });
    await build();
    writeFileSync(stamp, wanted);
    return true;
  } finally {
    letGo();
  }
}

const LONGEST_BUILD = 15 * 60_000;

/** Whether a process is there. @param {number} pid */
const isAlive = (pid) => {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // Of another user.
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
};

/**
 * Waits until no other process builds: two that write one folder at once leave a mixture. One that was killed holds nothing.
 * @param {string} file
 * @returns {Promise<() => void>} lets go
 */
async function held(file) {
  mkdirSync(dirname(file), { recursive: true });
  for (;;) {
    try {
      writeFileSync(file, String(process.pid), { flag: 'wx' });
      return () => rmSync(file, { force: true });
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    }
    const pid = Number(readOr(file));
    // Empty for a moment, between being made and being written.
    const age = Date.now() - (statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    const isLeft = pid > 0 && (pid === process.pid || !isAlive(pid));
    // A number may be another process by now: no build takes so long.
    if (isLeft || age > LONGEST_BUILD) rmSync(file, { force: true });
    else await new Promise((done) => setTimeout(done, 200));
  }
}
