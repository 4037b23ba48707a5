// npm's `prepare` runs this after every install, so that `npx fitwright` works at once.
import { existsSync } from 'node:fs';
import { buildCommand } from './command-build.mjs';
import { inRepository } from './root.mjs';
import { stampInstall } from './stamp.mjs';

if (existsSync(inRepository('node_modules/vite'))) {
  await buildCommand(inRepository('dist/command'));
} else {
  console.log(
    'The command line was not built: the development packages are not installed (npm ci --include=dev).',
  );
}
stampInstall();
