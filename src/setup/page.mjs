// Builds the page into dist/page where something changed.
import { buildPage } from './build-page.mjs';

await buildPage();
