import { expect, test } from 'vitest';
import { offers } from '../../src/page/handing-on/templates.ts';
import { jobs, sheetOf, templates } from '../templates/shelf.ts';

test('every sheet that comes with the program is offered by its own title block, and fetched whole', async () => {
  expect(offers.map(({ key }) => key).sort()).toEqual(
    [...templates, ...jobs].map((name) => name.replace(/^.*\//, '')).sort(),
  );
  for (const name of [...templates, ...jobs]) {
    const offer = offers.find(({ key }) => name.endsWith(key));
    const file = sheetOf(name);
    expect(offer).toMatchObject({ title: file.title, template: file.template === true });
    expect(await offer?.file()).toEqual(file);
  }
});
