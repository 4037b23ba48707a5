import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { sheetSchema } from '../../../shared/sheet/sheet-schema.ts';
import { inRepository } from '../../../src/setup/root.mjs';

it('the published schema is the one the fields make', () => {
  const published = readFileSync(inRepository('shared/sheet/sheet.schema.json'), 'utf8');
  expect(published, 'npm run format writes it').toBe(`${JSON.stringify(sheetSchema(), undefined, 2)}\n`);
});
