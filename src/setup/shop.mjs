// `npm run shop`: builds page and server where something changed, and serves both to the shop's network.
import { pathToFileURL } from 'node:url';
import { buildShop } from './build-shop.mjs';
import { inRepository } from './root.mjs';

await buildShop();
const { main } = await import(pathToFileURL(inRepository('dist/shop/shop.js')).href);
await main(process.argv.slice(2), process.env);
