// Part of `npm run lint`: the page is styled by utilities (uno.config.ts); CSS by hand stays for what they cannot say.
import { readdirSync, readFileSync } from 'node:fs';
import postcss from 'postcss';
import { inRepository } from './root.mjs';

/** Drawings, print, the tracks of the grid and the bare elements. */
const MOST = 500;

let count = 0;
for (const name of readdirSync(inRepository('src/page'), { recursive: true, encoding: 'utf8' })) {
  if (!name.endsWith('.css')) continue;
  postcss.parse(readFileSync(inRepository(`src/page/${name}`), 'utf8'), { from: name }).walkDecls(() => {
    count += 1;
  });
}
console.log(`Declarations of CSS by hand: ${count}, at most ${MOST}`);
if (count > MOST) {
  console.error(
    `src/page holds ${count - MOST} declarations of CSS by hand too many: use utilities in the component, or a shortcut of uno.config.ts.`,
  );
  process.exitCode = 1;
}
