import { expect, it } from 'vitest';
import { sheetSchema } from '../../../shared/sheet/sheet-schema.ts';

it('the published schema is the one the fields make: `npm run schema` writes it', async () => {
  const text = `${JSON.stringify(sheetSchema(), undefined, 2)}\n`;
  await expect(text).toMatchFileSnapshot('../../../shared/sheet/sheet.schema.json');
});
