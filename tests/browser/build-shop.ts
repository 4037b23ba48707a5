import { buildShop } from '../../src/setup/build-shop.mjs';

/** Once, before two tests at a time begin with it. */
export default buildShop;
