import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { createServer as createSecureServer, type Server as SecureServer } from 'node:https';
import type { Duplex } from 'node:stream';
import { ABOUT_PATH, type About, KEYS_PATH, SYNC_PATH, WIRE_EDITION } from '../../document/sharing/wire.ts';
import { shopHeaders } from '../../setup/headers.mjs';
import { answerFrom } from '../../setup/server.mjs';
import type { Page } from '../../setup/site.mjs';
import type { Keys } from '../store/keys.ts';
import { sendJson } from './answer.ts';
import type { Hosts } from './hosts.ts';
import { answerKeys, fullKey } from './keys.ts';

const HEALTH_PATH = '/shop/health';
const METRICS_PATH = '/shop/metrics';

/** How the server is. */
export interface Health {
  /** Whether what devices send can be stored now. */
  storing: 'well' | 'full' | 'failing';
}

/** What a shop's server serves. */
export interface Served {
  /** The files of the page. */
  site: Map<string, Page>;
  hosts: Hosts;
  keys: Keys;
  /** Where the network finds it. */
  addresses(): string[];
  certificate?: { cert: Buffer; key: Buffer };
  /** Takes a connection over that asks for the socket of the sheets. */
  upgrade(request: IncomingMessage, socket: Duplex, head: Buffer): void;
  health(): Promise<Health>;
  /** In the text format of OpenMetrics. */
  metrics(): string;
}

/** Milliseconds for the head of a request, and for all of it; looked at every second. */
const HEADERS_WITHIN = 5000;
const REQUEST_WITHIN = 30_000;
const looked = { connectionsCheckingInterval: 1000 };

const METRICS_TYPE = 'application/openmetrics-text; version=1.0.0; charset=utf-8';

const pathOf = (request: IncomingMessage): string => request.url?.split('?', 1)[0] ?? '';

/** The page and the sheets of a shop on one port. Not listening yet. */
export const createShopServer = (served: Served): Server | SecureServer => {
  const { site, hosts, keys, certificate } = served;
  const headersFor = ({ headers }: IncomingMessage): Record<string, string> =>
    shopHeaders(headers.host ?? '', certificate !== undefined);
  const page = answerFrom(site, headersFor);

  const own = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const send = sendJson(request, response, headersFor(request));
    const path = pathOf(request);
    if (path === KEYS_PATH || path.startsWith(`${KEYS_PATH}/`)) {
      await answerKeys(request, path, keys, send);
      return;
    }
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      send(
        405,
        { message: 'Only GET and HEAD are answered here.' },
        { allow: 'GET, HEAD', connection: 'close' },
      );
    } else if (path === ABOUT_PATH) {
      send(200, { shop: true, wire: WIRE_EDITION, addresses: served.addresses() } satisfies About);
    } else if (path === HEALTH_PATH) {
      const health = await served.health();
      send(health.storing === 'well' ? 200 : 503, health);
    } else if (path === METRICS_PATH) {
      if (!(await fullKey(request, keys, send))) return;
      const text = served.metrics();
      response.writeHead(200, {
        ...headersFor(request),
        'content-type': METRICS_TYPE,
        'content-length': Buffer.byteLength(text),
        'cache-control': 'no-store',
      });
      response.end(request.method === 'HEAD' ? undefined : text);
    } else if (path === SYNC_PATH) {
      send(426, { message: 'A WebSocket is spoken here.' }, { upgrade: 'websocket', connection: 'upgrade' });
    } else {
      send(404, { message: 'There is nothing at this address.' });
    }
  };

  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    const fault = hosts.fault(request);
    if (fault !== undefined) {
      // Nothing of the request is repeated in the headers: its host is not one of this server's.
      sendJson(
        request,
        response,
        shopHeaders('localhost', certificate !== undefined),
      )(421, { message: fault });
      return;
    }
    if (!pathOf(request).startsWith('/shop/')) {
      page(request, response);
      return;
    }
    own(request, response).catch((error: unknown) => {
      console.error(error);
      if (response.headersSent) response.destroy();
      else sendJson(request, response, headersFor(request))(500, { message: 'The server failed at this.' });
    });
  };

  const server = certificate
    ? createSecureServer(
        { ...certificate, minVersion: 'TLSv1.2', handshakeTimeout: HEADERS_WITHIN, ...looked },
        answer,
      )
    : createServer(looked, answer);
  // Whoever never ends what they ask for holds no connection.
  server.headersTimeout = HEADERS_WITHIN;
  server.requestTimeout = REQUEST_WITHIN;
  server.on('upgrade', (request: IncomingMessage, socket: Duplex, head: Buffer) => {
    socket.on('error', () => socket.destroy());
    const status =
      hosts.fault(request) !== undefined
        ? '421 Misdirected Request'
        : pathOf(request) !== SYNC_PATH && '404 Not Found';
    if (status) {
      socket.end(`HTTP/1.1 ${status}\r\nconnection: close\r\ncontent-length: 0\r\n\r\n`);
      return;
    }
    served.upgrade(request, socket, head);
  });
  return server;
};
