import { readFileSync } from 'node:fs';

const HEAD = /\.json\?head$/;

/**
 * A sheet's file asked for with `?head` gives its title block and whether it is a template: what a list shows of it,
 * without the sheet.
 *
 * @returns {import('vite').Plugin}
 */
export function sheetHeads() {
  return {
    name: 'sheet-heads',
    enforce: 'pre',
    load(id) {
      if (!HEAD.test(id)) return undefined;
      const path = id.slice(0, id.lastIndexOf('?'));
      this.addWatchFile(path);
      const { title, template = false } = JSON.parse(readFileSync(path, 'utf8'));
      return { code: `export default ${JSON.stringify({ title, template })};`, moduleType: 'js' };
    },
  };
}
