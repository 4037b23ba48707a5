import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser, ownBrowserFile, ownBrowserFolder } from './browser.mjs';

/** @param {string} program @param {string[]} args @param {Record<string, string>} [env] */
const run = (program, args, env = {}) =>
  spawnSync(program, args, {
    cwd: ownBrowserFolder,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  }).status === 0;

function installFromDebian() {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return;
  console.log('No Chromium found: installing the package chromium-headless-shell ...');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  if (run('apt-get', ['update', '-q'], env)) {
    run('apt-get', ['install', '-q', '-y', '--no-install-recommends', 'chromium-headless-shell'], env);
  }
}

/** Fonts for a system that has none: without any, every page crashes. @param {string} fonts @param {string} cache */
const fontSettings = (fonts, cache) => `<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig>
  <dir>/usr/share/fonts</dir>
  <dir>${fonts}</dir>
  <cachedir>${cache}</cachedir>
</fontconfig>
`;

function installFromNpm() {
  if (process.platform !== 'linux' || process.arch !== 'x64') return;
  console.log(`No Chromium found: unpacking one into ${ownBrowserFolder} ...`);
  const npm = process.env.npm_execpath;
  const args = [
    'install',
    '--prefix',
    ownBrowserFolder,
    '--no-save',
    '--ignore-scripts',
    '@sparticuz/chromium@143.0.4',
  ];
  if (!(npm ? run(process.execPath, [npm, ...args]) : run('npm', args))) return;

  // It unpacks into the temporary folder of its process; its own libraries come along only where it takes the
  // system for the one it was made for.
  const unpacked = join(ownBrowserFolder, 'unpacked');
  mkdirSync(unpacked, { recursive: true, mode: 0o700 });
  const unpack = "import chromium from '@sparticuz/chromium'; await chromium.executablePath();";
  const asOnItsSystem = { TMPDIR: unpacked, CODEBUILD_BUILD_IMAGE: 'nodejs20' };
  if (!run(process.execPath, ['--input-type=module', '--eval', unpack], asOnItsSystem)) return;

  const path = join(unpacked, 'chromium');
  const fontsFile = join(unpacked, 'fonts.conf');
  writeFileSync(fontsFile, fontSettings(join(unpacked, 'fonts'), join(unpacked, 'font-cache')));
  /** @type {Record<string, string>} */
  const env = { FONTCONFIG_FILE: fontsFile };
  const linked = spawnSync('ldd', [path], { encoding: 'utf8' });
  if (linked.status !== 0 || linked.stdout.includes('not found')) {
    env.LD_LIBRARY_PATH = [join(unpacked, 'al2023', 'lib'), process.env.LD_LIBRARY_PATH]
      .filter(Boolean)
      .join(':');
  }
  rmSync(join(ownBrowserFolder, 'node_modules'), { recursive: true, force: true });
  writeFileSync(ownBrowserFile, JSON.stringify({ path, env }));
}

/** Finds a Chromium or installs one. @returns {string | null} what to do where neither worked */
export function ensureBrowser() {
  if (findBrowser()) return null;
  mkdirSync(ownBrowserFolder, { recursive: true, mode: 0o700 });
  for (const install of [installFromDebian, installFromNpm]) {
    install();
    const browser = findBrowser();
    if (browser) {
      console.log(`Browser tests use ${browser.path}`);
      return null;
    }
  }
  return [
    'The browser tests need Chromium or Chrome, none was found, and none could be installed here.',
    'Install one, or set CHROMIUM to the path of one: CHROMIUM=/path/to/chrome npm test',
  ].join('\n');
}
