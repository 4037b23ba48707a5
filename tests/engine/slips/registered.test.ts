import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { importsOf } from '../../../src/setup/import-lint.mjs';
import { inRepository } from '../../../src/setup/root.mjs';

const FOLDER = 'src/engine/slips';
const REGISTER = `${FOLDER}/likeliest.ts`;

const sourceOf = (path: string): string => readFileSync(inRepository(path), 'utf8');

/** Files that define a slip of a reading, and that the register does not import. */
const unregistered = (files: ReadonlyMap<string, string>): string[] => {
  const registered = new Set(importsOf(REGISTER, files.get(REGISTER)!).map(({ to }) => to));
  return [...files].flatMap(([path, source]) =>
    /^export const \w+: Slipway\b/m.test(source) && !registered.has(path)
      ? [`${path}: this slip is never asked about; add it to SLIPWAYS in ${REGISTER}, the likeliest first.`]
      : [],
  );
};

it('every slip is registered, or says where to', () => {
  const files = new Map(
    readdirSync(inRepository(FOLDER)).map((name) => [`${FOLDER}/${name}`, sourceOf(`${FOLDER}/${name}`)]),
  );
  expect(unregistered(files)).toEqual([]);
  files.set(`${FOLDER}/two-turns.ts`, files.get(`${FOLDER}/turn.ts`)!);
  expect(unregistered(files)).toEqual([
    expect.stringContaining('two-turns.ts: this slip is never asked about'),
  ]);
  expect([...files.values()].filter((source) => /: Slipway\b/.test(source)).length).toBeGreaterThan(8);
});
