import { spawnSync } from 'node:child_process';
import { hostname } from 'node:os';
import { listen } from '../../setup/listen.mjs';
import { inRepository } from '../../setup/root.mjs';
import { readSite } from '../../setup/site.mjs';
import { onStop } from '../../setup/stop.mjs';
import { Metrics } from '../base/metrics.ts';
import { Hosts } from '../http/hosts.ts';
import { createShopServer, type Health } from '../http/server.ts';
import { Keys } from '../store/keys.ts';
import type { Store } from '../store/store.ts';
import { openSync, type Sync } from '../sync/sync.ts';
import { addressesOf, ownAddress } from './addresses.ts';
import { readCertificate } from './certificate.ts';
import { Failure } from './failure.ts';
import { greeting } from './greeting.ts';
import { holdStore, openStore, storeWords } from './open-store.ts';
import type { Options } from './options.ts';

/** Keys that another server or process made or ended are known after so many milliseconds. */
const LOOKS = 1000;
/** A store that does not answer by then is failing. */
const ANSWERS_WITHIN = 2000;

const healthOf = async (store: Store, sync: Sync): Promise<Health> => {
  const { storing } = sync.health();
  const late = new Promise<Health>((done) =>
    setTimeout(done, ANSWERS_WITHIN, { storing: 'failing' }).unref(),
  );
  const answer = store.answers().then(
    (): Health => ({ storing }),
    (): Health => ({ storing: storing === 'full' ? storing : 'failing' }),
  );
  return Promise.race([answer, late]);
};

const metricsText = (metrics: Metrics, sync: Sync): string => {
  const { sockets, documents, connections, waiting } = sync.health();
  const resident = process.memoryUsage.rss();
  return metrics.text({
    sockets,
    documents,
    connections,
    waiting_updates: waiting,
    resident_bytes: resident,
  });
};

/** Builds the page where something changed: in a process of its own, whose memory goes with it. */
const buildPage = (): void => {
  const { status } = spawnSync(process.execPath, [inRepository('src/setup/page.mjs')], { stdio: 'inherit' });
  if (status !== 0) throw new Failure('The page could not be built: see the message above.');
};

/** Which key the printed link has; undefined where none is printed. */
const keyToPrint = async (keys: Keys, { link, key, postgres }: Options): Promise<string | undefined> => {
  if (!link) return undefined;
  // Over a shared database another server may have printed its link a moment ago.
  if (!postgres) await keys.endUnused();
  const wish = { label: key ? 'the key given at the start' : 'a link printed at a start', readOnly: false };
  if (key === undefined) return (await keys.make(wish, { printed: true })).key;
  const record = await keys.rightsOf(key);
  if (record === 'key-unknown') await keys.make(wish, { given: key });
  else if (typeof record === 'string')
    throw new Failure('The key given with --key or FITWRIGHT_KEY has been ended: choose another.');
  return key;
};

/** Serves the shop until the process is asked to stop. */
export const serve = async (options: Options): Promise<void> => {
  const { certificate: files, address, names } = options;
  const certificate = files && readCertificate(files);
  if (typeof certificate === 'string') throw new Failure(certificate);
  buildPage();
  const site = readSite(inRepository('dist/page'));

  const letGo = holdStore(options);
  const store = await openStore(options);
  const keys = new Keys(store.database);
  await keys.follow(LOOKS);
  const metrics = new Metrics();
  const sync = openSync({ store, keys, metrics, redis: options.redis });
  const secure = certificate !== undefined;
  let addresses: string[] = [];
  const server = createShopServer({
    site,
    hosts: new Hosts([hostname(), ...names]),
    keys,
    addresses: () => addresses,
    ...(certificate && { certificate }),
    upgrade: (request, socket, head) => sync.upgrade(request, socket, head),
    health: () => healthOf(store, sync),
    metrics: () => metricsText(metrics, sync),
  });
  const port = await listen(server, { port: options.port, next: false, host: address }).catch((error) => {
    throw new Failure(`Port ${options.port} cannot be opened: ${(error as Error).message}`);
  });
  // A port is never silently changed: links and printed codes lead to it, and browsers keep jobs by it.
  if (port === null)
    throw new Failure(
      `Port ${options.port} is busy. Give another (--port N), or let it find a free one (--port 0).`,
    );

  const stop = async (): Promise<void> => {
    server.close();
    server.closeAllConnections();
    const left = await sync.stop();
    keys.stop();
    await store.database.close();
    letGo();
    if (left > 0)
      console.error(`${left} updates could not be stored; the devices they came from still have them.`);
    process.exit(left > 0 ? 1 : 0);
  };
  onStop(() => {
    stop().catch((error: unknown) => {
      console.error(error);
      process.exit(1);
    });
  });

  addresses = addressesOf({ port, secure, names, ...(address && { address }) });
  console.log(
    greeting({
      addresses,
      here: ownAddress(port, secure, address),
      key: await keyToPrint(keys, options),
      secure,
      store: storeWords(options),
    }),
  );
};
