// The Redis and PostgreSQL that tests of several servers run against, found or installed like the browser.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @param {string} name */
const onPath = (name) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));

/** Debian keeps the programs of PostgreSQL off the path, a folder a version. */
const POSTGRES = '/usr/lib/postgresql';

/** @returns {{ redis?: string, postgres?: string }} path of `redis-server`, and of the folder with `initdb` and `postgres` */
export function findServices() {
  const redis = onPath('redis-server');
  const versions = existsSync(POSTGRES)
    ? readdirSync(POSTGRES).map((name) => join(POSTGRES, name, 'bin'))
    : [];
  const initdb = onPath('initdb');
  const postgres = [...(initdb ? [join(initdb, '..')] : []), ...versions].find(
    (folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres')),
  );
  return { ...(redis && { redis }), ...(postgres && { postgres }) };
}

/** Finds both or installs them. @returns {string | null} what to do where that did not work */
export function ensureServices() {
  const missing = () => {
    const { redis, postgres } = findServices();
    return [...(redis ? [] : ['redis-server']), ...(postgres ? [] : ['postgresql'])];
  };
  if (missing().length > 0 && process.getuid?.() === 0 && existsSync('/etc/debian_version')) {
    console.log(`Installing ${missing().join(' and ')} for the tests of several servers ...`);
    /** @type {import('node:child_process').SpawnSyncOptions} */
    const options = {
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    spawnSync('apt-get', ['update', '-q'], options);
    spawnSync('apt-get', ['install', '-q', '-y', '--no-install-recommends', ...missing()], options);
  }
  return missing().length === 0
    ? null
    : `Not found, and could not be installed here: ${missing().join(' and ')}. Tests of several servers are left out.`;
}
