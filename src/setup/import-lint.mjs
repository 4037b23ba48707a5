import { dirname, join } from 'node:path/posix';
import { parseSync } from 'vite';
import { folderRules, packageRules, withoutPackages } from './import-rules.mjs';

/**
 * One import of a file. `to`: a path from the top, or the name of a package. `early`: runs before the importing file
 * does, so that a ring of such imports can meet a name that has no value yet; types and `import()` are not.
 * @typedef {{ from: string, to: string, package: boolean, early: boolean }} Import
 */

/** The folder of the rules a path lies in, or null. @param {string} path */
const folderOf = (path) => Object.keys(folderRules).find((folder) => path.startsWith(`${folder}/`)) ?? null;

/**
 * What a file imports: statements, `import()`, workers and other `new URL('./x', import.meta.url)`, `import.meta.glob`.
 * @param {string} from path from the top, with /
 * @param {string} source
 * @returns {Import[]}
 */
export function importsOf(from, source) {
  const { module, errors } = parseSync(from, source);
  if (errors.length > 0) throw new SyntaxError(`${from}: ${errors[0]?.message}`);
  /** @param {string} request @param {boolean} early @returns {Import} */
  const found = (request, early) =>
    request.startsWith('.')
      ? { from, to: join(dirname(from), request.replace(/\?.*$/, '')), package: false, early }
      : { from, to: request, package: true, early };
  const fromExports = module.staticExports.flatMap(({ entries }) =>
    entries.flatMap(({ moduleRequest, isType }) =>
      moduleRequest ? [found(moduleRequest.value, !isType)] : [],
    ),
  );
  const fromImports = module.staticImports.map(({ moduleRequest, entries }) =>
    found(moduleRequest.value, entries.length === 0 || entries.some(({ isType }) => !isType)),
  );
  const dynamic = module.dynamicImports.flatMap(({ moduleRequest }) => {
    const literal = /^(['"`])([^'"`$]+)\1$/.exec(source.slice(moduleRequest.start, moduleRequest.end));
    return literal?.[2] ? [found(literal[2], false)] : [];
  });
  // Only a real `import.meta` counts, not one in a string or a comment.
  const named = module.importMetas.flatMap(({ start, end }) => {
    const address = /new URL\(\s*['"](\.[^'"]*)['"]\s*,\s*$/.exec(source.slice(0, start));
    const glob = /^\.glob\b[^(]*\(([^)]*)\)/.exec(source.slice(end));
    const patterns = (glob?.[1] ?? '').matchAll(/['"](\.[^'"]*)['"]/g);
    return [...(address ? [address] : []), ...patterns].map(([, to = '']) => found(to, false));
  });
  return [...fromImports, ...fromExports, ...dynamic, ...named];
}

/** Whether a package is the one a rule names, or a part of it. @param {string} name @param {string} start */
const belongsTo = (name, start) =>
  name === start || name.startsWith(/[/:]$/.test(start) ? start : `${start}/`);

/** What is wrong with one import, or null. @param {Import} link @returns {string | null} */
export function wrongWay({ from, to, package: isPackage }) {
  const home = folderOf(from);
  // Tests may import anything; settings files at the top belong to no folder.
  if (!home) return null;
  if (!isPackage) {
    const inside = folderOf(to);
    if (inside)
      return folderRules[home]?.includes(inside) ? null : `${from}: ${home} may not import ${inside} (${to})`;
    return to.includes('/') ? `${from}: nothing here may import ${to}` : null;
  }
  if (withoutPackages.includes(home)) return `${from}: ${home} imports no package (${to})`;
  const rule = packageRules.find(([start]) => belongsTo(to, start));
  return rule && !rule[1].includes(home) ? `${from}: ${to} belongs in ${rule[1].join(', ')}` : null;
}

/**
 * Rings of files that import each other early, at least one of every group that hangs together so; each begins with
 * its alphabetically first file.
 * @param {Import[]} links
 * @returns {string[][]}
 */
export function importRings(links) {
  /** @type {Map<string, Set<string>>} */
  const next = new Map();
  for (const { from, to, early } of links) {
    if (early) next.set(from, (next.get(from) ?? new Set()).add(to));
  }
  /** @type {Map<string, string[]>} */
  const rings = new Map();
  /** @type {Set<string>} */
  const done = new Set();
  /** @type {string[]} */
  const path = [];
  /** @param {string} file */
  const visit = (file) => {
    const at = path.indexOf(file);
    if (at >= 0) {
      const ring = path.slice(at);
      const first = ring.indexOf([...ring].sort()[0] ?? '');
      const turned = [...ring.slice(first), ...ring.slice(0, first)];
      rings.set(turned.join(' '), turned);
      return;
    }
    if (done.has(file)) return;
    path.push(file);
    for (const to of next.get(file) ?? []) visit(to);
    path.pop();
    done.add(file);
  };
  for (const file of [...next.keys()].sort()) visit(file);
  return [...rings.values()];
}

/**
 * Everything wrong with the imports of a tree of files.
 * @param {Map<string, string>} files source by path from the top
 * @returns {string[]}
 */
export function lintImports(files) {
  const links = [...files].flatMap(([from, source]) => importsOf(from, source));
  const lost = links.filter(
    ({ to, package: isPackage }) =>
      !isPackage && /\.m?[jt]sx?$/.test(to) && !to.includes('*') && !files.has(to),
  );
  return [
    ...links.flatMap((link) => wrongWay(link) ?? []),
    ...lost.map(({ from, to }) => `${from}: imports ${to}, which does not exist`),
    ...importRings(links).map((ring) => `a ring of imports: ${[...ring, ring[0]].join(' -> ')}`),
  ];
}
