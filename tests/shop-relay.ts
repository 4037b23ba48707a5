import { createServer, type Server } from 'node:http';
import { Hocuspocus } from '@hocuspocus/server';
import { WebSocketServer } from 'ws';
import * as Y from 'yjs';
import { markIn, SYNC_PATH, tokenIn, vectorText } from '../src/document/sharing/wire.ts';

/**
 * As much of a shop's server as the page's side is tested against: it speaks as `wire.ts` says, keeps documents in memory,
 * and does what a test asks of it, as no real one would.
 */
export interface Relay {
  port: number;
  /** Key -> what it may; a test may change it. */
  keys: Map<string, { readOnly?: boolean; sheet?: string; ended?: boolean }>;
  /** Acknowledges marks; off, a test sees what is not stored. */
  stores: boolean;
  /** So many more answers come before what others wrote is stored. */
  lags: number;
  document(name: string): Y.Doc | undefined;
  /** Drops every line, as a killed server would; documents stay. */
  drop(): void;
  stop(): Promise<void>;
}

export const KEY = 'A'.repeat(22);

export async function relay(site?: Server): Promise<Relay> {
  const kept = new Map<string, Uint8Array>();
  const hub = new Hocuspocus({
    quiet: true,
    debounce: 0,
    unloadImmediately: false,
    onAuthenticate: async ({ token, documentName, connectionConfig }) => {
      const right = own.keys.get(tokenIn(token)?.key ?? '');
      if (!right) throw { reason: 'key-unknown' };
      if (right.ended) throw { reason: 'key-ended' };
      if (right.sheet !== undefined && documentName !== `sheet.${right.sheet}`)
        throw { reason: 'key-other-sheet' };
      connectionConfig.readOnly = right.readOnly === true;
    },
    onLoadDocument: async ({ document, documentName }) => {
      const state = kept.get(documentName);
      if (state) Y.applyUpdate(document, state);
      return document;
    },
    onStoreDocument: async ({ document, documentName }) => {
      kept.set(documentName, Y.encodeStateAsUpdate(document));
    },
    onStateless: async ({ payload, document, connection }) => {
      const mark = markIn(payload);
      if (mark === undefined || !own.stores) return;
      own.lags -= 1;
      const vector = vectorText(Y.encodeStateVector(own.lags >= 0 ? new Y.Doc() : document));
      connection.sendStateless(JSON.stringify({ type: 'stored', mark, vector }));
    },
  });
  const sockets = new WebSocketServer({ noServer: true });
  const server = site ?? createServer((_, response) => response.writeHead(404).end());
  server.on('upgrade', (request, socket, head) => {
    if (request.url !== SYNC_PATH) {
      socket.destroy();
      return;
    }
    sockets.handleUpgrade(request, socket, head, (line) => hub.handleConnection(line, request));
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const own: Relay = {
    port: (server.address() as { port: number }).port,
    keys: new Map([[KEY, {}]]),
    stores: true,
    lags: 0,
    document: (name) => hub.documents.get(name),
    drop: () => {
      for (const line of sockets.clients) line.terminate();
    },
    stop: async () => {
      own.drop();
      server.closeAllConnections();
      await new Promise((done) => server.close(done));
    },
  };
  return own;
}
