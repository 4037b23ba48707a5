import { createServer, type Server } from 'node:http';
import { listen } from '../../src/setup/listen.mjs';
import { inRepository } from '../../src/setup/root.mjs';
import { createSiteServer } from '../../src/setup/server.mjs';
import { readSite, type Page as SentFile } from '../../src/setup/site.mjs';

export interface OwnServer {
  address: string;
  /** What it sends, by path: a test may change it. */
  site: Map<string, SentFile>;
  stop(): Promise<void>;
}

/** How late every file of the page comes, milliseconds; `npm run prove` asks for several. */
const LATE = Number(process.env.FITWRIGHT_LATE ?? 0);

/** Answers as `server` does, a while later for what the page loads after itself. */
const delayed = (server: Server): Server =>
  createServer((request, response) =>
    setTimeout(
      () => server.emit('request', request, response),
      request.url?.startsWith('/assets/') ? LATE : 0,
    ),
  );

/** A server of the built page that a test can stop, or give another edition of the page. */
export async function ownServer(): Promise<OwnServer> {
  const site = readSite(inRepository('dist/page'));
  const plain: Server = createSiteServer(site);
  const server = LATE > 0 ? delayed(plain) : plain;
  const port = await listen(server, { port: 0, next: false });
  return {
    address: `http://127.0.0.1:${port}/`,
    site,
    stop: () =>
      new Promise((done) => {
        server.close(() => done());
        server.closeAllConnections();
      }),
  };
}
