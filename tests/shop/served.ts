import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { HocuspocusProvider, HocuspocusProviderWebsocket } from '@hocuspocus/provider';
import { WebSocket } from 'ws';
import * as Y from 'yjs';
import {
  type KeyWish,
  type Refusal,
  refusalIn,
  type ServerSays,
  type Stored,
  SYNC_PATH,
  serverSays,
  tokenOf,
} from '../../src/document/sharing/wire.ts';
import type { Limits } from '../../src/shop/base/limits.ts';
import { Metrics } from '../../src/shop/base/metrics.ts';
import { Keys } from '../../src/shop/store/keys.ts';
import { openPostgres } from '../../src/shop/store/postgres.ts';
import { openSqlite } from '../../src/shop/store/sqlite.ts';
import { Store } from '../../src/shop/store/store.ts';
import { openSync, type Sync } from '../../src/shop/sync/sync.ts';

/** A server of a shop on a port of this machine, with its database in a file. */
export interface Served {
  port: number;
  folder: string;
  sync: Sync;
  store: Store;
  keys: Keys;
  metrics: Metrics;
  /** Makes a key. */
  key(wish?: Partial<KeyWish>): Promise<string>;
  stop(): Promise<number>;
}

export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'fitwright-shop-'));
export const dropFolder = (folder: string): void => rmSync(folder, { recursive: true, force: true });

/** @param pages at most so many pages of the file: a full disk, made at will */
export const openStore = async (folder: string, postgres?: string, pages?: number): Promise<Store> => {
  const store = new Store(
    postgres ? await openPostgres(postgres) : await openSqlite(join(folder, 'shop.sqlite'), pages),
  );
  await store.prepare();
  return store;
};

export async function served({
  folder = newFolder(),
  limits = {},
  port = 0,
  postgres,
  redis,
  pages,
}: {
  folder?: string;
  limits?: Partial<Limits>;
  port?: number;
  postgres?: string;
  redis?: string;
  pages?: number;
} = {}): Promise<Served> {
  const store = await openStore(folder, postgres, pages);
  const keys = new Keys(store.database);
  await keys.follow(60_000);
  const metrics = new Metrics();
  const sync = openSync({ store, keys, metrics, limits, redis });
  const server = createServer((_, response) => response.writeHead(404).end());
  server.on('upgrade', (request, socket, head) => sync.upgrade(request, socket, head));
  await new Promise<void>((done) => server.listen(port, '127.0.0.1', done));
  return {
    port: (server.address() as AddressInfo).port,
    folder,
    sync,
    store,
    keys,
    metrics,
    key: async (wish = {}) => (await keys.make({ label: 'a device', readOnly: false, ...wish })).key,
    stop: async () => {
      const left = await sync.stop();
      keys.stop();
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
      await store.database.close();
      return left;
    },
  };
}

/** A try that is given up for the next one fails, and nobody hears of it. */
class QuietSocket extends WebSocket {
  constructor(url: string) {
    super(url);
    this.on('error', () => {});
  }
}

/** A device as the page is one: a provider over a real socket, and what it was told. */
export class Device {
  readonly doc: Y.Doc;
  readonly socket: HocuspocusProviderWebsocket;
  readonly provider: HocuspocusProvider;
  readonly said: ServerSays[] = [];
  refusal: Refusal | undefined;
  scope: string | undefined;
  closedWith: number | undefined;
  private mark = 0;

  constructor(
    port: number,
    readonly key: string,
    name: string,
    // It forgets nothing that was overwritten, see `JoinedSheet`.
    doc = new Y.Doc({ gc: false }),
  ) {
    this.doc = doc;
    this.socket = new HocuspocusProviderWebsocket({
      url: `ws://127.0.0.1:${port}${SYNC_PATH}`,
      WebSocketPolyfill: QuietSocket,
      autoConnect: false,
      delay: 50,
      minDelay: 20,
      maxDelay: 200,
    });
    const connect = this.socket.connect.bind(this.socket);
    this.socket.connect = () => connect().catch(() => undefined);
    this.socket.on('close', ({ event }: { event: { code: number } }) => {
      this.closedWith = event.code;
    });
    this.provider = new HocuspocusProvider({
      websocketProvider: this.socket,
      name,
      document: this.doc,
      token: key.includes(' ') ? key : tokenOf(key),
      onAuthenticated: ({ scope }) => {
        this.scope = scope;
      },
      onAuthenticationFailed: ({ reason }) => {
        this.refusal = refusalIn(reason);
      },
      onStateless: ({ payload }) => {
        const said = serverSays(payload);
        if (said) this.said.push(said);
      },
    });
    this.provider.on('close', ({ event }: { event: { reason?: string } }) => {
      this.refusal ??= refusalIn(event.reason);
    });
    this.socket.shouldConnect = true;
    this.provider.attach();
  }

  get stored(): Stored | undefined {
    return this.said.filter((one) => one.type === 'stored').at(-1);
  }

  /** Asks when all so far is stored. @returns the mark */
  ask(): number {
    this.mark += 1;
    this.provider.sendStateless(JSON.stringify({ mark: this.mark }));
    return this.mark;
  }

  cells(): Y.Map<Y.Map<unknown>> {
    return this.doc.getMap('cells');
  }

  write(cell: string, key: string, value: unknown): void {
    this.doc.transact(() => {
      const map = this.cells().get(cell) ?? new Y.Map<unknown>();
      map.set(key, value);
      if (!this.cells().has(cell)) this.cells().set(cell, map);
    });
  }

  read(cell: string, key: string): unknown {
    return this.cells().get(cell)?.get(key);
  }

  close(): void {
    this.provider.destroy();
    this.socket.destroy();
  }
}
