import { describe, expect, test } from 'vitest';
import { fileRings, importsOf, lintImports } from '../../src/setup/import-lint.mjs';

const lint = (files: Record<string, string>) => lintImports(new Map(Object.entries(files)));
const target = { 'src/page/sheet.ts': '', 'src/engine/run.ts': '', 'shared/unit.ts': '', 'cells/fit.ts': '' };

describe('imports go one way', () => {
  test.each([
    ['src/engine/a.ts', `import '../page/sheet.ts'`, 'src/engine may not import src/page'],
    ['src/engine/a.ts', `import type { S } from '../page/sheet.ts'`, 'src/engine may not import src/page'],
    ['src/engine/a.ts', `const later = import('../page/sheet.ts')`, 'src/engine may not import src/page'],
    ['shared/a.ts', `export * from '../cells/fit.ts'`, 'shared may not import cells'],
    ['cells/a.ts', `export { run } from '../src/engine/run.ts'`, 'cells may not import src/engine'],
    [
      'src/document/a.ts',
      `new Worker(new URL('../engine/run.ts', import.meta.url))`,
      'src/document may not import src/engine',
    ],
    ['shared/a.ts', `import.meta.glob(['../cells/*.ts'], { eager: true })`, 'shared may not import cells'],
    [
      'src/page/a.ts',
      `import '../../tests/browser/fixture.ts'`,
      'nothing here may import tests/browser/fixture.ts',
    ],
    ['cells/a.ts', `import { createSignal } from 'solid-js'`, 'cells imports no package (solid-js)'],
    ['src/engine/a.ts', `import { render } from 'solid-js/web'`, 'solid-js/web belongs in src/page'],
    ['src/page/a.ts', `import { HyperFormula } from 'hyperformula'`, 'hyperformula belongs in src/engine'],
    [
      'src/engine/a.ts',
      `import { readFileSync } from 'node:fs'`,
      'node:fs belongs in src/command, src/setup',
    ],
  ])('%s: %s', (from, source, problem) => {
    const found = lint({ ...target, 'tests/browser/fixture.ts': '', [from]: source });
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(problem);
  });

  test('what the rules allow is not reported', () => {
    const allowed = {
      ...target,
      'src/page/main.tsx': `import { render } from 'solid-js/web'; import 'virtual:uno.css'; import './sheet.ts'; import '../engine/run.ts'; render(() => <p />, document.body)`,
      'src/command/main.ts': `import { readFileSync } from 'node:fs'; import '../engine/run.ts'; import '../../package.json'`,
      'cells/text.ts': `const text = "new URL('../src/page/sheet.ts', import.meta.url)"`,
      'tests/a.test.ts': `import '../src/page/sheet.ts'; import 'hyperformula'`,
    };
    expect(lint(allowed)).toEqual([]);
  });

  test('an import of a file that is not there is reported', () => {
    expect(lint({ 'shared/a.ts': `import './gone.ts'` })).toEqual([
      'shared/a.ts: imports shared/gone.ts, which does not exist',
    ]);
  });
});

describe('no ring of imports', () => {
  const ring = (back: string) =>
    lint({
      'shared/a.ts': `import { b } from './b.ts'; export const a = () => b`,
      'shared/b.ts': `import { c } from './c.ts'; export const b = () => c`,
      'shared/c.ts': back,
    });

  test('three files in a ring are reported once', () => {
    expect(ring(`import { a } from './a.ts'; export const c = () => a`)).toEqual([
      'a ring of imports: shared/a.ts -> shared/b.ts -> shared/c.ts -> shared/a.ts',
    ]);
  });

  test('a way back by types alone, or by import(), is a ring too', () => {
    const back = (text: string) => expect(ring(text)).toHaveLength(1);
    back(`import type { a } from './a.ts'; export const c = 1 as unknown as a`);
    back(`export const c = () => import('./a.ts')`);
  });

  test('an import for its effect alone counts', () => {
    const links = [
      ...importsOf('shared/a.ts', `import './b.ts'`),
      ...importsOf('shared/b.ts', `import './a.ts'`),
    ];
    expect(fileRings(links)).toEqual([['shared/a.ts', 'shared/b.ts']]);
  });
});

describe('no ring of folders', () => {
  const folders = (top: string) =>
    lint({
      'shared/units/inch.ts': `import { exact } from '../exact.ts'; export const inch = exact`,
      'shared/exact.ts': 'export const exact = 1',
      'shared/all.ts': top,
    });

  test('a folder that imports its child, which imports it, is reported', () => {
    expect(folders(`export { inch } from './units/inch.ts'`)).toEqual([
      'a ring of folders: shared -> shared/units -> shared',
    ]);
  });

  test('so it is by a glob, by import() and by types', () => {
    expect(folders(`export const all = import.meta.glob('./units/*.ts')`)).toHaveLength(1);
    expect(folders(`export const later = () => import('./units/inch.ts')`)).toHaveLength(1);
    expect(folders(`export type { inch } from './units/inch.ts'`)).toHaveLength(1);
    expect(folders(`export const none = 1`)).toEqual([]);
  });
});
