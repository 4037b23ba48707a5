import { readdirSync, readFileSync } from 'node:fs';
import { fileTests } from '@lezer/generator/test';
import { describe, it } from 'vitest';
import { parser } from '../../src/language/grammar/entry.grammar';

const folder = new URL('./cases/', import.meta.url);

for (const file of readdirSync(folder).sort()) {
  describe(`grammar cases of ${file}`, () => {
    for (const { name, run } of fileTests(readFileSync(new URL(file, folder), 'utf8'), file)) {
      it(name, () => run(parser));
    }
  });
}
