import { dirname, join } from 'node:path/posix';
import { parseSync } from 'vite';
import { folderRules, packageRules, withoutPackages } from './import-rules.mjs';

/**
 * One import of a file. `to`: a path from the top, or the name of a package.
 * @typedef {{ from: string, to: string, package: boolean }} Import
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
  /** @param {string} request @returns {Import} */
  const found = (request) =>
    request.startsWith('.')
      ? { from, to: join(dirname(from), request.replace(/\?.*$/, '')), package: false }
      : { from, to: request, package: true };
  const fromExports = module.staticExports.flatMap(({ entries }) =>
    entries.flatMap(({ moduleRequest }) => (moduleRequest ? [found(moduleRequest.value)] : [])),
  );
  const fromImports = module.staticImports.map(({ moduleRequest }) => found(moduleRequest.value));
  const dynamic = module.dynamicImports.flatMap(({ moduleRequest }) => {
    const literal = /^(['"`])([^'"`$]+)\1$/.exec(source.slice(moduleRequest.start, moduleRequest.end));
    return literal?.[2] ? [found(literal[2])] : [];
  });
  // Only a real `import.meta` counts, not one in a string or a comment.
  const named = module.importMetas.flatMap(({ start, end }) => {
    const address = /new URL\(\s*['"](\.[^'"]*)['"]\s*,\s*$/.exec(source.slice(0, start));
    const glob = /^\.glob\b[^(]*\(([^)]*)\)/.exec(source.slice(end));
    const patterns = (glob?.[1] ?? '').matchAll(/['"](\.[^'"]*)['"]/g);
    return [...(address ? [address] : []), ...patterns].map(([, to = '']) => found(to));
  });
  return [...fromImports, ...fromExports, ...dynamic, ...named];
}

/** Whether a path is one of a glob's: `*` within a folder, `**` through folders. @param {string} path @param {string} glob */
const matchesGlob = (path, glob) => {
  const pattern = glob
    .split(/(\*\*\/|\*)/)
    .map((part) =>
      part === '**/' ? '(?:.*/)?' : part === '*' ? '[^/]*' : part.replace(/[.+?^${}()|[\]\\]/g, '\\$&'),
    )
    .join('');
  return new RegExp(`^${pattern}$`).test(path);
};

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
 * Rings of a graph, at least one of every group of nodes that hangs together so; each begins with its alphabetically
 * first node.
 * @param {Iterable<readonly [from: string, to: string]>} arrows
 * @returns {string[][]}
 */
export function ringsOf(arrows) {
  /** @type {Map<string, Set<string>>} */
  const next = new Map();
  for (const [from, to] of arrows) next.set(from, (next.get(from) ?? new Set()).add(to));
  /** @type {Map<string, string[]>} */
  const rings = new Map();
  /** @type {Set<string>} */
  const done = new Set();
  /** @type {string[]} */
  const path = [];
  /** @param {string} node */
  const visit = (node) => {
    const at = path.indexOf(node);
    if (at >= 0) {
      const ring = path.slice(at);
      const first = ring.indexOf([...ring].sort()[0] ?? '');
      const turned = [...ring.slice(first), ...ring.slice(0, first)];
      rings.set(turned.join(' '), turned);
      return;
    }
    if (done.has(node)) return;
    path.push(node);
    for (const to of next.get(node) ?? []) visit(to);
    path.pop();
    done.add(node);
  };
  for (const node of [...next.keys()].sort()) visit(node);
  return [...rings.values()];
}

/** Files that import each other, types and `import()` included. @param {Import[]} links */
export const fileRings = (links) => ringsOf(links.map(({ from, to }) => /** @type {const} */ ([from, to])));

/**
 * Folders that import each other, types and the files of a glob included. A folder is the files directly in it: parent
 * and child count apart.
 * @param {Import[]} links
 * @param {Iterable<string>} paths every file
 */
export function folderRings(links, paths) {
  const all = [...paths];
  return ringsOf(
    links
      .filter((link) => !link.package && folderOf(link.from))
      .flatMap(({ from, to }) =>
        (to.includes('*') ? all.filter((path) => matchesGlob(path, to)) : [to]).map(
          (file) => /** @type {const} */ ([dirname(from), dirname(file)]),
        ),
      )
      .filter(([from, to]) => from !== to && folderOf(`${to}/`)),
  );
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
    ...fileRings(links).map((ring) => `a ring of imports: ${[...ring, ring[0]].join(' -> ')}`),
    ...folderRings(links, files.keys()).map(
      (ring) => `a ring of folders: ${[...ring, ring[0]].join(' -> ')}`,
    ),
  ];
}
