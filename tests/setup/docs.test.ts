import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inRepository } from '../../src/setup/root.mjs';

/** Paths of the repository that a Markdown text names: in backticks outside code blocks, and as targets of links. */
function pathsNamed(markdown: string): string[] {
  const prose = markdown.replace(/^```.*?^```/gms, '');
  const quoted = [...prose.matchAll(/`([^`\s]+)`/g)].map(([, text = '']) => text);
  const linked = [...prose.matchAll(/\]\(([^)#\s]+)[^)]*\)/g)].map(([, target = '']) => target);
  return [
    // A name with a place to fill in, such as cells/<kind>.ts, stands for many files.
    ...quoted.filter(
      (text) => /^(src|cells|shared|templates|tests|\.ci)\//.test(text) && !/[<>*{}…]/.test(text),
    ),
    ...quoted.filter((text) => /^[\w.-]+\.(md|json|ts)$/.test(text)),
    ...linked.filter((target) => !/^[a-z]+:/i.test(target)),
  ];
}

const read = (path: string) => readFileSync(inRepository(path), 'utf8');

describe.each(['README.md', 'DEVELOPERS.md'])('%s names only what is there', (guide) => {
  test('files and folders', () => {
    expect(pathsNamed(read(guide)).filter((path) => !existsSync(inRepository(path)))).toEqual([]);
  });

  test('npm scripts', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const named = [...read(guide).matchAll(/npm run ([\w:-]+)/g)].map(([, name = '']) => name);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });
});

describe('paths named in a guide', () => {
  test('a path that is gone is found, a place to fill in is not taken for one', () => {
    const guide =
      'See `src/gone.ts`, `cells/<kind>.ts`, [a](shared/b.md#c), [w](https://example.org/).\n```\n`src/x.ts`\n```\n';
    expect(pathsNamed(guide)).toEqual(['src/gone.ts', 'shared/b.md']);
  });
});
