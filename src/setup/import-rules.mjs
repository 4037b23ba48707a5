/**
 * Which folder may import which. One way round: page -> document, engine, language, cells -> shared.
 * @type {Record<string, string[]>}
 */
export const folderRules = {
  shared: ['shared'],
  cells: ['shared', 'cells'],
  'src/language': ['shared', 'cells', 'src/language'],
  'src/engine': ['shared', 'cells', 'src/language', 'src/engine'],
  'src/document': ['shared', 'src/language', 'src/document'],
  'src/page': ['shared', 'cells', 'templates', 'src/language', 'src/engine', 'src/document', 'src/page'],
  'src/command': [
    'shared',
    'cells',
    'templates',
    'src/language',
    'src/engine',
    'src/document',
    'src/command',
  ],
  // The shop's server: Node only. It shares the document's rules and the files of the page, never the page itself.
  'src/shop': ['shared', 'src/language', 'src/document', 'src/setup', 'src/shop'],
  'src/setup': ['src/setup'],
  templates: ['shared', 'templates'],
};

/**
 * Packages that have one home, by the start of their name, and the folders that may import them.
 * @type {[start: string, homes: string[]][]}
 */
export const packageRules = [
  ['solid-js', ['src/page']],
  ['codemirror', ['src/page']],
  ['@codemirror/', ['src/page', 'src/language']],
  ['@lezer/generator', ['src/setup']],
  ['@lezer/', ['src/language', 'src/page']],
  ['hyperformula', ['src/engine']],
  ['yjs', ['src/document', 'src/shop']],
  ['lib0', ['src/document', 'src/shop']],
  ['y-protocols', ['src/document', 'src/shop']],
  ['@hocuspocus/provider', ['src/document']],
  ['ws', ['src/shop']],
  ['libsql', ['src/shop']],
  ['ioredis', ['src/shop']],
  ['pg', ['src/shop']],
  ['write-excel-file', ['src/document']],
  ['uqr', ['src/page', 'src/shop']],
  ['jsqr', ['src/page']],
  ['idb', ['src/document']],
  ['@dagrejs/', ['src/page']],
  ['virtual:', ['src/page']],
  ['node:', ['src/command', 'src/setup', 'src/shop']],
];

/** Folders that import no package at all: they must run anywhere. */
export const withoutPackages = ['shared', 'cells', 'templates'];
